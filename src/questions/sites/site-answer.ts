/** What is said of one site. */
import type { Answer } from '../size/answer.js';
import type { Course, SizedRow } from './row.js';

/** Figures of a site as its row has them, beside the answer. */
export interface SiteFacts {
  readonly id: string;
  readonly name: string;
  /** Where its ware is delivered; '' : with all others. */
  readonly drop: string;
  readonly opening: string | null;
  readonly seats: number | null;
  readonly guestsAnHour: number;
  /** Share of guests who take away. */
  readonly takeaway: number;
  readonly stayMinutes: number;
}

export interface SiteAnswer extends SiteFacts, Omit<SizedRow, 'unit' | 'course'> {
  /** Pieces to buy, by ware. */
  readonly add: Readonly<Record<string, number>>;
  readonly busiest: { readonly stage: keyof Answer['busy']; readonly share: number } | null;
  readonly course: Course | null;
}

export interface FailedSite extends SiteFacts {
  readonly failed: string;
}

export interface NamedWare {
  readonly id: string;
  readonly name: string;
}
