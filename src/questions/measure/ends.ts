/** Inputs at the ends of what is plausible: their range, that of their default, or a fifth off where a measurable input has none. */
import { widenedRange } from '../../scenario/widened-range.js';
import { fill } from '../../scenario/defaults.js';
import { dotted } from '../../scenario/path.js';
import { withValueAt } from '../../scenario/tree.js';
import { compile } from '../../scenario/compile.js';
import type { Input } from '../../scenario/inputs.js';
import { scaled, withRawValue } from '../../scenario/raw-paths.js';
import { checkTree, type ReadOptions } from '../../scenario/read-scenario.js';
import type { Scenario } from '../../scenario/scenario.js';
import { tilted, meanSize } from '../../measuring/tilted-sizes.js';
import { sizesWritten } from './written.js';

const OFF = 0.2;

/** Prices of running, and what no guest, clearer or machine does, move no stock. */
const ELSEWHERE = new Set(['costs', 'suit', 'supply', 'storage', 'alternatives', 'staffHour']);

/** Inputs that a morning's sheet can measure: where the file gives no range for one, it is in doubt all the same. */
export const SHEET_MEASURES =
  /^(?:guests\.(?:dwell(?:\.bySize\.\d+)?|partySize|staysIn.*|drinksEach|secondDrink)|clearing\.(?:every|trip)|washing\.(?:partLoadWait|machines\[\d+\]\.(?:cycle|loading|unloading)))$/;

const defaults = fill({ guests: {}, clearing: {}, washing: {}, counter: {} });
const usual = defaults.wraps;

export interface Ends {
  readonly ends: readonly [unknown, unknown];
  readonly fifthOff: boolean;
}

/** @param measurable whether a sheet can measure it */
export function endsOf(input: Input, scenario: Scenario, measurable: boolean): Ends | null {
  if (ELSEWHERE.has(String(input.at[0])) || input.path.endsWith('.price')) return null;
  if (input.range !== null) return { ends: input.range, fifthOff: false };
  if (!measurable || input.basis === 'measured') return null;
  if (input.path === 'guests.partySize') {
    const shares = compile(scenario).guests.partySize;
    const mean = meanSize(shares);
    const end = (times: number): unknown => sizesWritten(tilted(shares, Math.max(1, mean * times)));
    return { ends: [end(1 - OFF), end(1 + OFF)], fifthOff: true };
  }
  const usual = usualRange(input);
  if (usual !== null) return { ends: usual, fifthOff: false };
  const key = input.at.at(-1);
  return {
    ends: [scaled(input.value, 1 - OFF, key), scaled(input.value, 1 + OFF, key)],
    fifthOff: true,
  };
}

/** The range of the default for a field whose value the file gives without one, widened to that value. */
function usualRange({ at, value }: Input): readonly [unknown, unknown] | null {
  const range = usual.find((one) => dotted(one.path) === dotted(at))?.range ?? null;
  return range === null
    ? null
    : (widenedRange(withValueAt(defaults.tree, at, value), at, range) ?? range);
}

/** The house with another value of an input; null where it cannot have it. */
export function withInput(
  raw: unknown,
  input: Pick<Input, 'at'>,
  value: unknown,
  name: string,
  reading: ReadOptions,
): Scenario | null {
  const read = checkTree(
    withRawValue(raw, input.at, value),
    () => ({ line: 1, column: 1 }),
    name,
    reading,
  );
  return read.ok ? read.scenario : null;
}
