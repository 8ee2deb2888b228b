/**
 * What the page and its engines say to one another. Plain data: the page sends an ask with a number, an
 * engine answers with any number of replies of that number, the last of them `done`.
 */
import type { GivenOptions, GivenScenario } from '../letter/live.js';
import type { LetterPart } from '../letter/letter.js';
import type { Answer } from '../questions/size/answer.js';
import type { DayWalk } from '../questions/walk/day.js';
import type { Edit } from '../scenario/edit-scenario.js';
import type { FormGroup } from '../scenario/input-forms.js';
import type { WalkLayout } from '../questions/walk/layouts.js';

/** A scenario and how the reader wants it told. */
export interface Asked {
  readonly fileName: string;
  readonly text: string;
  readonly options: GivenOptions;
  readonly look: Look;
}

export interface Look {
  readonly units: 'metric' | 'us';
  /** BCP 47 tag; null: as the scenario says. */
  readonly locale: string | null;
}

/** Sections that are worked out when the reader asks for them. */
export type Question = 'alternatives' | 'map' | 'moves' | 'racks' | 'suit' | 'order' | 'cards';

export type Request =
  /** The other engine, to share days with. */
  | { readonly kind: 'join'; readonly port: MessagePort; readonly version: string }
  /** The scenario's forms, nothing run; `sent`: what the letter on show says. */
  | {
      readonly kind: 'forms';
      readonly asked: Asked;
      readonly sent: Pick<GivenScenario, 'pieces' | 'tightest'>;
    }
  /** Do once, unseen, what will be asked soon, so that it is quick then. */
  | { readonly kind: 'warm'; readonly asked: Asked; readonly pictures: boolean }
  /** A quick answer on few days, after changes to the text. */
  | { readonly kind: 'quick'; readonly asked: Asked; readonly edits: readonly Edit[] }
  /** The certified answer, with its pictures. */
  | { readonly kind: 'sure'; readonly asked: Asked; readonly pictures: boolean }
  | { readonly kind: 'question'; readonly asked: Asked; readonly question: Question }
  | {
      readonly kind: 'walk';
      readonly asked: Asked;
      readonly day: number;
      readonly stock: Readonly<Record<string, number>>;
    }
  | { readonly kind: 'workbook'; readonly asked: Asked }
  /** Which inputs move the cost most. */
  | { readonly kind: 'swings'; readonly asked: Asked }
  /** Drop what is under way. */
  | { readonly kind: 'stop' };

export interface Ask {
  readonly id: number;
  readonly request: Request;
}

/** A mistake in the scenario, where it stands and what to do. */
export interface Mistake {
  readonly path: string;
  /** 0: in a change that was not made. */
  readonly line: number;
  readonly message: string;
}

/** What the boxes of the page show of the scenario and its answer. */
export interface View {
  readonly name: string;
  readonly currency: string;
  readonly locale: string;
  /** Opening in minutes after midnight; null where the house has no clock. */
  readonly openingMinute: number | null;
  readonly ware: readonly ViewWare[];
  /** A stock was given rather than asked for. */
  readonly stockGiven: boolean;
  readonly tightest: GivenScenario['tightest'];
  /** The machines as the file has them; null: as many as are needed. */
  readonly machines: readonly unknown[] | null;
  /** Null: as in the letter that was sent. */
  readonly days: Answer['days'] | null;
  readonly has: { readonly suit: boolean };
}

/** How far an input moves the cost of the stock from one end of its range to the other, whole currency units. */
export interface Swing {
  readonly path: string;
  readonly money: number;
}

export interface ViewWare {
  readonly id: string;
  readonly name: string;
  readonly pieces: number;
}

export type Reply =
  | { readonly kind: 'mistakes'; readonly mistakes: readonly Mistake[] }
  /** The text as it stands after the changes, and its forms. */
  | { readonly kind: 'text'; readonly text: string; readonly groups: readonly FormGroup[] }
  | { readonly kind: 'view'; readonly view: View }
  | {
      readonly kind: 'answer';
      readonly certified: boolean;
      readonly view: View;
      readonly parts: Readonly<Partial<Record<LetterPart, string>>>;
      readonly json: string | null;
    }
  | {
      readonly kind: 'pictures';
      readonly parts: Readonly<Pick<Record<LetterPart, string>, 'pictures' | 'findings'>>;
      readonly json: string;
    }
  | { readonly kind: 'swings'; readonly swings: readonly Swing[] }
  | { readonly kind: 'section'; readonly html: string }
  | { readonly kind: 'progress'; readonly days: number }
  | {
      readonly kind: 'walk';
      readonly walk: DayWalk;
      readonly layouts: Readonly<Record<string, WalkLayout>>;
    }
  | { readonly kind: 'file'; readonly bytes: Uint8Array }
  | { readonly kind: 'fault'; readonly message: string }
  | { readonly kind: 'done' };

export interface Answered {
  readonly id: number;
  readonly reply: Reply;
}
