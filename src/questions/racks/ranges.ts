/** How many pieces a rack may hold where the rim of an item is only known within a range. */
import { length } from '../../quantities/units.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { ReportInput } from '../../tell/context.js';
import type { RackLine } from './answer.js';

export interface CountRange {
  readonly ware: string;
  readonly name: string;
  readonly fewest: number;
  readonly most: number;
  /** Ends of the rim's range, mm. */
  readonly fromMm: number;
  readonly toMm: number;
}

/** Items in the racks they are washed in whose count is not the same at the ends and in the middle of the rim's range. */
export function countRanges(
  lines: readonly RackLine[],
  { ware, racks }: Pick<Scenario, 'ware' | 'racks'>,
  inputs: readonly ReportInput[],
): CountRange[] {
  return lines
    .filter(({ used }) => used)
    .flatMap((line) => {
      const input = inputs.find(({ path }) => path === `ware.${line.ware}.rim`);
      const [from, to] = (input?.range ?? []).map((text) => length.safeParse(text).data ?? null);
      if (from == null || to == null) return [];
      const one = ware[line.ware]!;
      const stretched = (one.rimAcross ?? one.rim!) / one.rim!;
      const counts = [from, (from + to) / 2, to].flatMap(
        (rim) =>
          piecesPerRackOf(
            {
              ...one,
              rim,
              ...(one.rimAcross === undefined ? {} : { rimAcross: rim * stretched }),
            },
            line.rack,
            racks,
          ) ?? [],
      );
      const all = [...counts, line.pieces];
      const [fewest, most] = [Math.min(...all), Math.max(...all)];
      return fewest === most
        ? []
        : [{ ware: line.ware, name: line.name, fewest, most, fromMm: from, toMm: to }];
    });
}
