/** What the racks say: in lines that a terminal has room for, and nothing of a count that does not follow from the shapes. */
import { describe, expect, it } from 'vitest';
import { shownIn, type Block } from '../../../src/tell/block.js';
import { columnsOf } from '../../../src/tell/clean-text.js';
import { writeText } from '../../../src/tell/write-text.js';
import { countRanges } from '../../../src/questions/racks/ranges.js';
import { racksBlocks } from '../../../src/questions/racks/tell.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { answersOf, scenarioNames } from '../sections/answers.js';

const { opened, context, answers } = await answersOf(scenarioNames[0]!);
const { scenario } = opened;
const told = (
  racks = answers.racks,
  house = scenario,
  only: string | undefined = undefined,
): string => writeText(racksBlocks(racks, house, context, only), { width: 80, all: true });
const joined = (text: string): string => text.replace(/\s+/g, ' ');

const inputsWith = (ware: string, from: string, to: string) =>
  context.inputs.map((input) =>
    input.path === `ware.${ware}.rim` ? { ...input, range: [from, to] as const } : input,
  );

describe('the racks, told', () => {
  it('fit terminals of 60, 80 and 120 columns, details and all', () => {
    const blocks = racksBlocks(answers.racks, scenario, context);
    for (const width of [60, 80, 120])
      for (const line of writeText(blocks, { width, all: true }).split('\n'))
        expect(columnsOf(line), line).toBeLessThanOrEqual(width);
  });

  it('begin with the counts, then no more than seven findings', () => {
    const [, lead, list] = shownIn('text', racksBlocks(answers.racks, scenario, context));
    const said = (lead as Extract<Block, { kind: 'paragraphs' }>).texts[0];
    for (const { name, pieces } of answers.racks.lines.filter(({ used }) => used))
      expect(said).toContain(`${name} ${pieces}`);
    expect((list as Extract<Block, { kind: 'list' }>).items.length).toBeLessThanOrEqual(7);
  });

  it('say the frequency and the hours that the lifting index rests on', () => {
    const { loads, openHours } = answers.racks.washing;
    expect(joined(told())).toContain(
      `${(loads.racksADay / openHours).toFixed(1)} lifts an hour; the shift counts as up to 8 hours`,
    );
    expect(told()).toContain('We assume a lift');
    expect(told({ ...answers.racks, lift: { ...answers.racks.lift, reachCm: 30 } })).toContain(
      'You gave a lift',
    );
  });

  it('ask for a trial where saucers on edge are more than usual, and show what no loading can exceed', () => {
    const line = answers.racks.lines.find(({ ware, used }) => ware === 'saucer' && used)!;
    const onEdge = { ...line, rack: 'peg', rackName: 'Peg rack', pieces: 51, tryOne: true };
    const lines = answers.racks.lines.map((one) => (one === line ? onEdge : one));
    expect(joined(told({ ...answers.racks, lines }))).toContain(
      'Saucer: 51 in a peg rack is more than the usual 24 to 36 (common practice, no source). We keep at least 3 mm between two faces, which we assume. Try one rack and count.',
    );
    expect(joined(told())).not.toContain('Try one rack');
    const most = answers.racks.lines.find(({ ware, used }) => ware === 'medium-cup' && used)!.most!;
    expect(told()).toMatch(new RegExp(`Medium cup +open rack +\\d+ +${most.pieces} +`));
  });

  it('say where the file and the shape differ, and where they do not', () => {
    const line = answers.racks.lines.find(({ ware, used }) => ware === 'medium-cup' && used)!;
    const givenAs = (pieces: number): string =>
      joined(
        told({
          ...answers.racks,
          given: [{ ware: line.ware, name: line.name, rack: line.rackName, pieces, from: 'given' }],
        }),
      );
    expect(givenAs(line.pieces)).toContain(
      `Medium cup: ${line.pieces} in one open rack, as your file says.`,
    );
    expect(givenAs(line.pieces - 1)).toMatch(
      new RegExp(
        `file says ${line.pieces - 1} in one open rack.*From its shape we work out ${line.pieces}\\.`,
      ),
    );
  });

  it('leave out washing and the other items where one is asked about', () => {
    const one = told(answers.racks, scenario, 'saucer');
    expect(one).not.toMatch(/cup \d|Washing in the rush|in cups [\d.]+\smm wider/);
    const saucer = answers.racks.lines.find(({ ware, used }) => ware === 'saucer' && used)!;
    expect(one).toContain(`Saucer ${saucer.pieces}`);
    expect(told(answers.racks, scenario, 'teaspoon')).toContain('No shape is known');
  });
});

describe('the count over the range of the rim', () => {
  const ranges = (from: string, to: string) =>
    countRanges(answers.racks.lines, scenario, inputsWith('medium-cup', from, to)).filter(
      ({ ware }) => ware === 'medium-cup',
    );

  it('has the counts of the same cup with each rim', () => {
    const withRim = (rim: number): number =>
      piecesPerRackOf({ ...scenario.ware['medium-cup']!, rim }, 'open', scenario.racks)!;
    expect(ranges('83 mm', '9.6 cm')).toEqual([
      expect.objectContaining({ fewest: withRim(96), most: withRim(83), fromMm: 83, toMm: 96 }),
    ]);
    expect(withRim(96)).toBeLessThan(withRim(83));
  });

  it('is not named where the rim is known so well that it makes no difference', () => {
    const rim = scenario.ware['medium-cup']!.rim!;
    expect(ranges(`${rim} mm`, `${rim + 0.1} mm`)).toEqual([]);
  });
});
