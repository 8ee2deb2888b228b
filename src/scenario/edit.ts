/** Changes of a scenario as data, and why one was not made. */
import type { Basis } from '../catalogue/catalogue.js';
import { dotted, type Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';

/**
 * What a value is based on, where that changes too. `range: null` and `source: ''` take them off; a range
 * may be one line of the file, as somebody types it.
 */
export interface Marks {
  readonly basis?: Basis;
  readonly range?: readonly [unknown, unknown] | { readonly flow: string } | null;
  readonly source?: string;
}

/** One change. Paths are those of the scenario, as inputs and problems tell them: marks do not show. */
export type Edit =
  /** A value as the file holds it ("9 min", 3, [cup, saucer]), its range widened if it leaves it; without one, only its marks change. */
  | ({
      readonly kind: 'set';
      readonly path: Path;
      readonly value?: unknown;
      /** A plain duration is the new mean of the law that stands there, which else stays as it is. */
      readonly asMean?: boolean;
    } & Marks)
  /** A value as one line of the file, as somebody types it: `{ lognormal: { mean: 42 min, sd: 18 min } }`. */
  | ({ readonly kind: 'set'; readonly path: Path; readonly flow: string } & Marks)
  /** Something new by name (a drink, a ware, an alternative), or at the end of a list (a machine). */
  | { readonly kind: 'add'; readonly path: Path; readonly value: unknown }
  /** Out with it; where a default or a class has a value, that holds again. */
  | { readonly kind: 'remove'; readonly path: Path }
  /** A ware or a drink goes, and all that names it changes; `instead` takes its place in settings, null: nothing does. */
  | { readonly kind: 'retire'; readonly path: Path; readonly instead: string | null }
  /** Another name for people; ids stay. */
  | { readonly kind: 'rename'; readonly path: Path; readonly name: string };

/** A change that was not made, and why. */
export class EditRefused extends Error {
  constructor(readonly flaws: readonly Flaw[]) {
    super(flaws.map(({ path, rule, remedy }) => `${dotted(path)}: ${rule}; ${remedy}`).join('\n'));
  }
}

export const refuse = (path: Path, value: unknown, rule: string, remedy: string): never => {
  throw new EditRefused([problemAt(path, value, rule, remedy)]);
};
