/** What every part of the picture is drawn with. */
import { cleanText, shorten } from '../../tell/clean-text.js';
import type { Formats } from '../../tell/format.js';
import type { DayWalk } from '../../questions/walk/day.js';
import type { Layouts } from './marks.js';

export interface View {
  /** Number of the ware that is followed, or ALL. */
  readonly follow: number;
  readonly name: (ware: number) => string;
  readonly layouts: Layouts;
  readonly formats: Formats;
}

/** Names for people; a ware without one goes by its id. */
export const namer =
  (walk: DayWalk, names: Readonly<Record<string, string>>) =>
  (ware: number): string => {
    const id = walk.wares[ware]!;
    return shorten(cleanText(Object.hasOwn(names, id) ? names[id]! : id), 40);
  };
