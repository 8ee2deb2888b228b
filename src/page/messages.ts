/**
 * What the page and its engines say to one another. Plain data: the page sends an ask with a number, an
 * engine answers with any number of replies of that number, the last of them `done`.
 */
import type { GivenOptions } from '../letter/live.js';
import type { LetterPart } from '../letter/letter.js';
import type { Answer, HabitsAnswer, Share } from '../questions/size/answer.js';
import type { RiskCurve } from '../questions/size/charts/risk-against-stock.js';
import type { FillIn } from '../questions/fill-in.js';
import type { Made } from '../questions/made.js';
import type { OutFile } from '../questions/question.js';
import type { GivenFile } from '../questions/settings.js';
import type { DayWalk } from '../questions/walk/day.js';
import type { Edit } from '../scenario/edit.js';
import type { FormGroup } from '../scenario/input-forms.js';
import type { WalkLayout } from '../questions/walk/layouts.js';

/** A scenario and how the reader wants it written. */
export interface Asked {
  readonly fileName: string;
  readonly text: string;
  readonly options: GivenOptions;
  readonly look: Look;
  /** Tables that the scenario names, as text by name. */
  readonly beside?: Readonly<Record<string, string>>;
}

export interface Look {
  readonly units: 'metric' | 'us';
  /** BCP 47 tag; null: as the scenario says. */
  readonly locale: string | null;
}

export type Request =
  /** The other engine, to share days with. */
  | { readonly kind: 'join'; readonly port: MessagePort; readonly version: string }
  /** The scenario's forms, nothing run; `answer`: that of the letter on show. */
  | { readonly kind: 'forms'; readonly asked: Asked; readonly answer: Answer }
  /** An answer written anew, in other units or another place's numbers. */
  | {
      readonly kind: 'retell';
      readonly asked: Asked;
      readonly answer: Answer;
      readonly curves: readonly RiskCurve[];
      readonly habits?: HabitsAnswer | undefined;
      /** Where it is the letter as it was sent. */
      readonly made?: Made | undefined;
    }
  /** Do once, unseen, what will be asked soon, so that it is quick then. */
  | { readonly kind: 'warm'; readonly asked: Asked; readonly pictures: boolean }
  /** A quick answer on few days, after changes to the text, those of each box by themselves. */
  | { readonly kind: 'quick'; readonly asked: Asked; readonly edits: readonly (readonly Edit[])[] }
  /** The certified answer, with its pictures. */
  | { readonly kind: 'sure'; readonly asked: Asked }
  /** How safe a stock would be. */
  | {
      readonly kind: 'safety';
      readonly asked: Asked;
      readonly stock: Readonly<Record<string, number>>;
    }
  | {
      readonly kind: 'question';
      readonly asked: Asked;
      /** Id of an offer. */
      readonly offer: string;
      /** Settings of the question as they were typed, by name. */
      readonly typed: Readonly<Record<string, string>>;
      /** A filled table; `fill`: put it into the boxes, and work nothing out yet. */
      readonly table?: GivenFile | undefined;
      readonly fill?: boolean | undefined;
      /** The certified answer to what is asked about, where it is known. */
      readonly answer?: Answer | undefined;
      /** It takes no days, so that no other engine is asked for any. */
      readonly alone?: boolean | undefined;
    }
  | {
      readonly kind: 'walk';
      readonly asked: Asked;
      /** Of day, where there are several. */
      readonly ofDay?: string | undefined;
      readonly day: number;
      readonly stock: Readonly<Record<string, number>>;
    }
  | { readonly kind: 'workbook'; readonly asked: Asked }
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
  /** Of all pieces, in whole currency units. */
  readonly cost: number;
  /** Share of safe days that is asked for. */
  readonly level: number;
  /** Share of safe days that was measured; null on listed days. */
  readonly share: Share | null;
  /** A stock was given rather than asked for. */
  readonly stockGiven: boolean;
  readonly tightest: Pick<Answer['tightest'], 'day' | 'ware'>;
  /** Where there are several kinds of day, the one that is shown. */
  readonly tightestKind?: string;
  /** The machines as the file has them; null: as many as are needed. */
  readonly machines: readonly unknown[] | null;
  /** Null: as in the letter that was sent. */
  readonly days: Answer['days'] | null;
  /** Guests expected in the busiest hour. */
  readonly busiestHour: number;
  /** Mean stay of a guest, minutes. */
  readonly stayMinutes: number;
  /** No clearing rounds: each table is cleared when it is left. */
  readonly clearedAtOnce: boolean;
  /** What can be asked of this house. */
  readonly offers: readonly ViewOffer[];
}

/** What the reader can ask for, worked out then. */
export interface ViewOffer {
  readonly id: string;
  /** Null: pages to print. */
  readonly title: string | null;
  /** Labels of the boxes to ask with, by name of the setting. */
  readonly boxes: Readonly<Record<string, string>>;
  /** It is a table to fill in. */
  readonly fillIn: boolean;
  /** Names of the tables beside the scenario that it reads. */
  readonly tables: readonly string[];
}

/** What an offer is answered with. */
export interface Section {
  readonly html: string;
  readonly figures?: OutFile | undefined;
  readonly form?: FillIn | undefined;
  /** Changes of the scenario that it comes to. */
  readonly edits?: readonly Edit[] | undefined;
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
    }
  | { readonly kind: 'parts'; readonly parts: Readonly<Partial<Record<LetterPart, string>>> }
  /** The last of a certified answer: its pictures, and the answer itself. */
  | {
      readonly kind: 'whole';
      readonly parts: Readonly<Partial<Record<LetterPart, string>>>;
      readonly answer: Answer;
      readonly curves: readonly RiskCurve[];
    }
  | { readonly kind: 'safety'; readonly share: number }
  | ({ readonly kind: 'section' } & Section)
  /** Said by the page itself: what stands of a section is of a house before; it is worked out from the beginning. */
  | { readonly kind: 'anew' }
  /** What is known of a section that is still being worked out; empty: none of it holds any more. */
  | { readonly kind: 'interim'; readonly html: string }
  /** `most`: no more than so many days follow, from now on. */
  | { readonly kind: 'progress'; readonly days: number; readonly most?: number }
  | {
      readonly kind: 'walk';
      readonly walk: DayWalk;
      readonly layouts: Readonly<Record<string, WalkLayout>>;
    }
  | { readonly kind: 'file'; readonly ending: string; readonly bytes: Uint8Array }
  | { readonly kind: 'fault'; readonly message: string }
  /** What belongs together: nothing is drawn between one and the next. */
  | { readonly kind: 'several'; readonly replies: readonly Reply[] }
  | { readonly kind: 'done' };

export interface Answered {
  readonly id: number;
  readonly reply: Reply;
}
