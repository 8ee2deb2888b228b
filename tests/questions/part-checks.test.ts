import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { partProblems } from '../../src/questions/part-checks.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { formatProblem } from '../../src/scenario/problems.js';

const demo = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8');
const reading = { piecesPerRack: piecesPerRackOf };

/** What `cuptide check` says of the demo with these texts in place of others. */
function told(...changes: readonly (readonly [string, string])[]): string[] {
  const text = changes.reduce((all, [from, to]) => {
    expect(all).toContain(from);
    return all.replace(from, to);
  }, demo);
  const read = readScenario(text, 'house.yaml', reading);
  return (read.ok ? partProblems(read, 'house.yaml', reading) : read.problems).map(formatProblem);
}

describe('all parts of a scenario are checked together', () => {
  it('finds nothing wrong with the scenarios at hand', () => {
    for (const name of ['1-commuter-bar', '2-brunch-room', '3-great-hall', '4-bakery-corner']) {
      const read = readScenario(readFileSync(`scenarios/${name}.yaml`, 'utf8'), name, reading);
      expect(read.ok && partProblems(read, name, reading), name).toEqual([]);
    }
  });

  it('tells what is wrong with alternatives, map, supply, storage, takeaway and drinks at once, in the order of the file', () => {
    const all = told(
      ['extraction: 20 %', 'extraction: 35 %'],
      ['    latte: { paper', '    late: { paper'],
      ['saucer: [medium-cup, large-cup] } }', 'saucer: [medium-cup, big-cup] } }'],
      ['leadTime: 7 days', 'leadTime: 900 days'],
      ['drinks: [flat-white, cappuccino, tea]', 'drinks: [flat-white, capuccino, tea]'],
      ['high: 2 }', 'high: 2 }\n  onTop: { medum-cup: 3 }'],
      ['{ clearing.every: about 5 min }', '{ clearing.evry: 5 min }'],
      ['  discount: 5 %', '  discount: 5 %\n  map: { classes: [hod] }'],
    );
    const says = [
      /suit\.shot\.extraction: "35 %" is over 30 %/,
      /suit\.drinks\.late: "late" is not on the menu; did you mean "latte"\?/,
      /supply\.saucers\.fits\.saucer\[1\]: "big-cup" is not a ware of this scenario/,
      /leadTime: "900 days" may be longer than the time the order plans for \(730 days\)/,
      /supply\.takeaway\.cups\.small\.drinks\[1\]: "capuccino" is not on the menu; did you mean "cappuccino"\?/,
      /storage\.onTop\.medum-cup: "medum-cup" is not a ware/,
      /alternatives\.clear-often\.change\.clearing\.evry.*did you mean "every"\?/,
      /costs\.map\.classes\[0\]: "hod" is not a class of dishwasher; did you mean "hood"\?/,
    ];
    expect(all).toHaveLength(says.length);
    says.forEach((say, at) => expect(all[at]).toMatch(say));
    for (const one of all) expect(one).toMatch(/^house\.yaml:\d+:\d+: /);
  });

  it('tells one fault of a drink once, as the file has it', () => {
    expect(told(['foam: 5 mm', 'foam: 500 mm'])).toEqual([
      expect.stringMatching(/suit\.drinks\.flat-white\.foam: "500 mm" leaves no room for liquid/),
    ]);
    expect(told(['share: 100 %, foam: 5 mm', 'share: 100 %, foam: 5 mm, pours: 500 ml'])).toEqual([
      expect.stringMatching(
        /pours: "500 ml" makes \d+ ml with its foam, more than fits below the brim \(210 ml\)/,
      ),
    ]);
  });

  it('takes another name alone for no change', () => {
    expect(told(['scale: { arrivals: 120 % }', 'change: { name: Elsewhere }'])).toEqual([
      expect.stringMatching(/alternatives\.busier: "busier" changes nothing/),
    ]);
  });
});

describe('measures that cannot be true', () => {
  const cup = 'name: Large cup,';
  it.each([
    [
      'a foot wider than the rim',
      cup,
      `${cup} foot: 140 mm,`,
      /ware\.large-cup\.foot: "140 mm" is wider than the rim \(108 mm\)/,
    ],
    [
      'a well wider than its saucer',
      'well: 62 mm',
      'well: 200 mm',
      /ware\.saucer\.well: "200 mm" is as wide as the saucer or wider \(155 mm\)/,
    ],
    [
      'a compartment of no opening',
      'owned: { open: 4 }',
      'owned: { open: 4 }, measures: { grid-36: { opening: 0 mm } }',
      /racks\.measures\.grid-36\.opening: "0 mm" is not right: a compartment rack needs the opening/,
    ],
    [
      'compartments wider than the rack',
      'owned: { open: 4 }',
      'owned: { open: 4 }, measures: { grid-36: { opening: 100 mm } }',
      /grid-36\.opening: "100 mm" is not right: 6 openings cannot be wider than the inside of the rack, 460 mm/,
    ],
    [
      'a negative gap',
      'owned: { open: 4 }',
      'owned: { open: 4 }, measures: { open: { clearance: -2 mm } }',
      /racks\.measures\.open\.clearance: "-2 mm" is negative/,
    ],
    [
      'an easy vessel that is not there',
      '  coffee: 24 EUR',
      '  guests: { easyHandle: 10 %, instead: { medium-cup: mug } }\n  coffee: 24 EUR',
      /suit\.guests\.instead\.medium-cup: "mug" is not in ware/,
    ],
    [
      'an easy vessel for one that is not there',
      '  coffee: 24 EUR',
      '  guests: { easyHandle: 10 %, instead: { mug: medium-cup } }\n  coffee: 24 EUR',
      /suit\.guests\.instead\.mug: "mug" is not in ware/,
    ],
  ])('%s', (_, from, to, say) => {
    expect(told([from, to])).toEqual([expect.stringMatching(say)]);
  });
});
