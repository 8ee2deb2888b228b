/** Pictures of mistakes at the rack: every right one keeps the rule, every wrong one breaks the rule it is about. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Mistake } from '../../../src/questions/cards/mistakes/mistake.js';
import { mistakesOf } from '../../../src/questions/cards/mistakes/mistakes-card.js';
import { atFault, gapsIn } from '../../../src/questions/cards/mistakes/overlaps.js';
import { sharesGlass } from '../../../src/questions/cards/mistakes/pieces-at-hand.js';
import { LEAST_GAP_MM } from '../../../src/racking/pegs.js';
import { tallestOf } from '../../../src/racking/rack.js';
import { depthOf } from '../../../src/racking/vessel.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import type { Scenario } from '../../../src/scenario/scenario.js';
import { drawView, type RackView } from '../../../src/tell/drawings/rack-view.js';
import { formatsFor } from '../../../src/tell/format.js';
import { stressedHouse } from './stress.js';

const folder = fileURLToPath(new URL('../../../scenarios/', import.meta.url));
const scenarioOf = (text: string): Scenario => {
  const read = readScenario(text, 'house.yaml', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.scenario;
};
const houses: readonly (readonly [string, Scenario])[] = [
  ...readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => [file, scenarioOf(readFileSync(folder + file, 'utf8'))] as const),
  ['nothing whose shape is known', { ...scenarioOf(stressedHouse(2, 1)), ware: {} }],
  ['many kinds in many families', scenarioOf(stressedHouse(12, 4))],
];
const formats = formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: 420 });
const of = (scenario: Scenario): readonly Mistake[] => mistakesOf({ scenario, formats });

type View<From extends RackView['from']> = Extract<RackView, { from: From }>;
const above = (view: RackView): View<'above'> => view as View<'above'>;
const beside = (view: RackView): View<'side'> => view as View<'side'>;

/** Least gap between saucers on edge, mm, measured across their faces. */
const gapOnEdge = ({ along, vessel, leanDeg }: View<'edge'>): number =>
  (along[1]! - along[0]!) * Math.cos((leanDeg * Math.PI) / 180) - depthOf(vessel);

/** Whether all of a view stands as it should. */
function keepsTheRules(view: RackView): boolean {
  if (view.from === 'edge') return gapOnEdge(view) >= (view.rack.waterGapMm ?? LEAST_GAP_MM) - 0.01;
  if (view.from === 'side')
    return view.pieces.every(
      ({ inverted, baseMm, vessel }) =>
        inverted &&
        baseMm === 0 &&
        vessel.heightMm <= Math.min(tallestOf(view.rack), view.roofMm ?? Infinity),
    );
  if (view.rack.kind === 'basket')
    return view.pieces.every((one, i) =>
      view.pieces.every(
        (other, j) =>
          i === j ||
          Math.abs(one.x - other.x) >= one.vessel.rimMm ||
          Math.abs(one.y - other.y) >= one.vessel.rimAcrossMm!,
      ),
    );
  const { vessel } = view.pieces[0]!;
  const { betweenMm, wallMm } = gapsIn(vessel, view.rack, view.pieces);
  return betweenMm >= -0.01 && wallMm >= -0.01;
}

/** The rule that each wrong picture must break. */
const broken: Readonly<Record<string, (mistake: Mistake) => boolean>> = {
  upright: ({ wrong }) => beside(wrong).pieces.every(({ inverted }) => !inverted),
  nested: ({ wrong, right }) =>
    beside(wrong).pieces.length === 2 * beside(right).pieces.length &&
    beside(wrong).pieces.some(({ baseMm, vessel }) => baseMm > 0 && baseMm <= vessel.heightMm),
  'too-many': ({ wrong, right }) =>
    above(wrong).pieces.length === above(right).pieces.length + 1 && !keepsTheRules(wrong),
  handles: ({ wrong, right }) =>
    above(wrong).pieces.length === above(right).pieces.length && !keepsTheRules(wrong),
  half: ({ wrong, right }) => 2 * above(wrong).pieces.length <= above(right).pieces.length,
  saucers: ({ wrong }) => !keepsTheRules(wrong),
  mixed: ({ wrong }) => new Set(above(wrong).pieces.map(({ vessel }) => vessel.shape)).size === 2,
  flat: ({ wrong, right }) => wrong.rack.kind === 'open' && right.rack.kind === 'grid',
  tall: ({ wrong }) =>
    beside(wrong).pieces.some(({ vessel }) => vessel.heightMm > beside(wrong).roofMm!),
  narrow: ({ wrong }) =>
    wrong.rack.kind === 'grid' && above(wrong).pieces[0]!.vessel.rimMm > wrong.rack.openingMm,
  over: ({ wrong }) =>
    gapsIn(above(wrong).pieces[0]!.vessel, wrong.rack, above(wrong).pieces).wallMm < 0,
  spoons: ({ wrong }) => !keepsTheRules(wrong),
};

describe.each(houses)('mistakes at the rack: %s', (_, scenario) => {
  const mistakes = of(scenario);

  it('are ten, each of its own', () => {
    expect(mistakes.length).toBe(10);
    expect(new Set(mistakes.map(({ id }) => id)).size).toBe(10);
    expect(mistakes.map(({ text }) => text).join(' ')).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it.each(mistakes.map((mistake) => [mistake.id, mistake] as const))(
    '%s: the right way keeps the rules, the wrong way breaks its own',
    (id, mistake) => {
      expect(keepsTheRules(mistake.right)).toBe(true);
      expect(broken[id]!(mistake)).toBe(true);
    },
  );

  it('gainsay nothing that this house does, and mark what is wrong', () => {
    if (sharesGlass(scenario)) expect(mistakes.some(({ id }) => id === 'mixed')).toBe(false);
    for (const { id, wrong } of mistakes.filter(({ wrong: view }) => view.from === 'above')) {
      const marks = above(wrong).pieces.filter((piece) => piece.wrong === true).length;
      expect(marks > 0).toBe(id !== 'half');
    }
  });
});

it('say as many as they draw', () => {
  const [, scenario] = houses[0]!;
  const { text, right } = of(scenario).find(({ id }) => id === 'too-many')!;
  expect(text).toMatch(new RegExp(`^${above(right).pieces.length} fit\\.`));
});

it('find the pieces that overlap, and no others', () => {
  const { rack, pieces } = above(of(houses[0]![1]).find(({ id }) => id === 'too-many')!.right);
  const { vessel } = pieces[0]!;
  const [one, two, far] = [pieces[0]!, { ...pieces[0]!, x: pieces[0]!.x + 20 }, pieces.at(-1)!];
  expect(atFault(vessel, rack, [one, two, far])).toEqual([true, true, false]);
});

it('are drawn with what is seen in words, escaped', () => {
  const { wrong } = of(houses[0]![1])[0]!;
  expect(drawView(wrong, '"><script>')).toMatch(/role="img" aria-label="&[^"<>]*"/);
});
