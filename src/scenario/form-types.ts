/** A scenario as forms: plain data that the page words and draws. */
import type { Basis } from '../catalogue/catalogue.js';
import type { FieldKind } from './form-fields.js';
import type { Path } from './path.js';

/** A word that may be chosen, and what the file then holds. */
export interface FieldOption {
  readonly word: string;
  readonly value: unknown;
  /** The name of what the word stands for (a class, a ware); absent where it is a plain word. */
  readonly name?: string;
}

/** What a value is based on. */
export interface FieldMark {
  readonly basis: Basis;
  /** Lowest and highest plausible value, as written; null: none given. */
  readonly range: readonly [string, string] | null;
  /** '' where none was given. */
  readonly source: string;
}

export interface FormField {
  /** Dotted, as problems and inputs have it. */
  readonly path: string;
  readonly at: Path;
  /**
   * 'choice' of `options`; 'text'; 'list' and 'map', written as one line of the file; else the kind of a
   * quantity: count, number, share, length, volume, mass, temperature, energy, power, duration, durationLaw, money, rate, ...
   */
  readonly kind: FieldKind;
  /** The value as written, on one line; '' where there is none. */
  readonly written: string;
  /** For a choice: all of them. For others: words that may stand in place of a number, or names that a list may hold. */
  readonly options: readonly FieldOption[];
  /** Written in the file, filled in by a default or a class, or not there at all. */
  readonly origin: 'file' | 'default' | 'none';
  /** The file may be silent about it: taking it out brings the default back, or leaves it unsaid. */
  readonly optional: boolean;
  /** Null: a fact or a choice that nobody measures, or nothing is there. */
  readonly mark: FieldMark | null;
  /** The unit of a bare number where nothing shows it: the house's currency. */
  readonly unit?: string;
  /** In an alternative: the place that it changes. */
  readonly of?: Path;
}

/** Fields that belong together: those of one drink, ware, machine, supplier; or of the group itself. */
export interface FormPart {
  /** Where it stands; [] for the group's own fields. */
  readonly at: Path;
  /** For people; '' for the group's own fields. As long and as odd as the file has it. */
  readonly name: string;
  /** It can be taken out of the scenario. */
  readonly canGo: boolean;
  readonly fields: readonly FormField[];
  /** What can be added within it, and what was added so and can be taken out. */
  readonly adds: readonly PartAddition[];
  readonly entries: readonly Path[];
  /** Places of the scenario that name it, so that they change when it goes. */
  readonly usedBy: readonly Path[];
}

/** Something to be added by a few values: an entry by name, one more in a list, or a group that is not there. */
export interface PartAddition {
  readonly at: Path;
  readonly by: 'name' | 'place' | 'group';
  readonly taken: readonly string[];
  /** Names that an entry may have; empty: any. */
  readonly names: readonly { readonly id: string; readonly name: string }[];
  readonly needs: readonly FormField[];
  /** Maps that it has, though they may be empty; from it on. */
  readonly empty: readonly Path[];
}

/** What can be added to a group, and how: `{ kind: 'add', path: [...at, id or place], value }`. */
export interface Addition {
  readonly thing: 'drink' | 'ware' | 'machine';
  readonly at: Path;
  /** Ids in use; for a list, as many as there are. */
  readonly taken: readonly string[];
  /** Classes to choose from (ware, machines), or pieces a drink may be served in. */
  readonly classes: readonly { readonly id: string; readonly name: string }[];
}

export const formGroupIds = [
  'house',
  'guests',
  'menu',
  'ware',
  'seats',
  'counter',
  'clearing',
  'washing',
  'racks',
  'costs',
  'supply',
  'storage',
  'suit',
  'alternatives',
] as const;
export type FormGroupId = (typeof formGroupIds)[number];

export interface FormGroup {
  readonly id: FormGroupId;
  readonly parts: readonly FormPart[];
  readonly adds: Addition | null;
  /** One more machine, as an alternative may have it: by its class. */
  readonly furtherMachine?: FormField;
}
