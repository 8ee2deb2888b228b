/**
 * How far the answer moves when a habit of the house is a fifth off: tables cleared sooner or later, part racks that
 * wait less or longer. A law keeps its kind and the ratio of its spread to its mean. Reported as differences from the
 * certified answer, read on fewer days that all readings have in common.
 */
import { minorPerUnit } from '../../quantities/money.js';
import type { Runner } from '../../cafe/runner.js';
import { dotted, type Path } from '../../scenario/path.js';
import { rawValueAt, scaled, withRawValue } from '../../scenario/raw-paths.js';
import { edited, type House } from '../../scenario/edited.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { valueAt } from '../../scenario/tree.js';
import { valueSize } from '../../scenario/value-size.js';
import type { Scenario } from '../../scenario/scenario.js';
import { QuickReader, type Quick } from '../compare/quick.js';
import type { Answer, HabitMoves, HabitsAnswer, Moved } from './answer.js';

/** What people do in a house and how long they stay; each asked about where the house has it. */
const HABITS: readonly Path[] = [
  ['guests', 'dwell'],
  ['clearing', 'every'],
  ['clearing', 'whenDirty'],
  ['clearing', 'trip'],
  ['washing', 'partLoadWait'],
  ['washing', 'partLoadsEvery'],
  ['washing', 'partLoadFrom'],
];
const OFF = 0.2;

/**
 * @param answer the certified answer of this scenario, whose days the readings share
 * @param mostDays days of each reading, at most those the answer was chosen on
 */
export async function habitsOf(
  opened: House,
  answer: Answer,
  runner: Runner,
  mostDays: number,
): Promise<HabitsAnswer> {
  const { scenario } = opened;
  const house = { ...opened, raw: scenario.kinds?.[0]!.raw ?? opened.raw };
  const days = Math.min(answer.days.chosenOn, mostDays);
  const { level, seed, currency } = answer;
  const reader = new QuickReader(runner, { level, seed, days, piecesPerRack: piecesPerRackOf });
  const now = await reader.read(scenario);
  const perUnit = minorPerUnit(currency);
  const habits: HabitMoves[] = [];
  for (const path of HABITS) {
    const size = valueSize(valueAt(scenario, path));
    if (size === null || size === 0) continue;
    const ends: (Moved | null)[] = [];
    for (const times of [1 - OFF, 1 + OFF]) {
      const other = changed(house, path, times);
      const same = other === null || valueSize(valueAt(other, path)) === size;
      ends.push(same ? null : movedTo(now, await reader.read(other), perUnit));
    }
    const [less, more] = ends as [Moved | null, Moved | null];
    habits.push({ path: dotted(path), less, more });
  }
  const all = habits.flatMap(({ less, more }) => [less, more]).filter((one) => one !== null);
  const least = (differences: readonly number[]): number => Math.min(0, ...differences);
  const most = (differences: readonly number[]): number => Math.max(0, ...differences);
  return {
    off: OFF,
    days,
    habits,
    stock: answer.stock.map(({ ware, pieces }, at) => {
      const differences = all.map((moved) => moved.pieces[at]!);
      return {
        ware,
        pieces,
        low: Math.max(0, pieces + least(differences)),
        high: pieces + most(differences),
      };
    }),
    cost: { low: least(all.map(({ cost }) => cost)), high: most(all.map(({ cost }) => cost)) },
  };
}

const movedTo = (from: Quick, to: Quick, perUnit: number): Moved => ({
  pieces: to.stock.map((pieces, ware) => pieces - from.stock[ware]!),
  cost: (to.stockCost - from.stockCost) / perUnit,
});

/** The house with a habit so many times as long; null where it cannot have that, such as racks more than full. */
function changed(house: House, path: Path, times: number): Scenario | null {
  const read = edited(
    house,
    ({ raw, inputs }) => {
      const written =
        rawValueAt(raw, path) ?? inputs.find((one) => one.path === dotted(path))?.value ?? null;
      return withRawValue(raw, path, scaled(written, times, path.at(-1)));
    },
    house.scenario.name,
    { piecesPerRack: piecesPerRackOf },
  );
  return read?.ok === true ? read.scenario : null;
}
