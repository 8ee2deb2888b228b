/** Each kind of file that is fuzzed: how it is made, what must hold of it, and which commands read it. */
import type fc from 'fast-check';
import { parse } from 'yaml';
import { spoilt, spoiltTable } from './generators.js';
import { smallHouses } from './houses.js';
import {
  bakeryRows,
  countsCase,
  fileOf,
  listedCase,
  mapCase,
  salesCase,
  scenarioCase,
  type Outcome,
} from './oracles.js';
import {
  letterCase,
  letterOf,
  sheetCase,
  sheetRows,
  siteRows,
  sitesCase,
} from './table-oracles.js';

/** A command as it is typed for a file; `agrees`: it ends with 0 just where the case was answered. */
interface Typed {
  readonly words: (file: string) => readonly string[];
  readonly agrees: boolean;
}

export interface Kind {
  readonly texts: fc.Arbitrary<string>;
  readonly holds: (text: string) => Promise<Outcome>;
  /** Of a hundred cases, how many are of this kind. */
  readonly share: number;
  readonly ending: string;
  readonly commands: readonly Typed[];
}

const treeOf = (file: string): Record<string, unknown> =>
  parse(fileOf(file)) as Record<string, unknown>;

const demos = ['1-commuter-bar', '2-brunch-room', '3-great-hall', '4-bakery-corner'].map((name) =>
  treeOf(`scenarios/${name}.yaml`),
);
/** Without what only the comparison reads, so that more of the changes fall on the rush. */
const rushes = demos.map(
  ({ alternatives: _a, supply: _s, suit: _u, storage: _t, ...rest }) => rest,
);
/** One in five is a demo. */
const scenarios = [...Array.from({ length: 11 }, () => smallHouses).flat(), ...rushes, ...demos];

const listed = {
  days: [0, 1].map((day) => ({
    parties: [1, 2, 5].map((size) => ({
      minute: 12.5 * size + day,
      size,
      staysIn: size !== 2,
      dwellMinutes: 38.2,
      drinks: [{ drink: 'flat-white', makeMinutes: 0.7 }],
      seconds: [{ drink: 'tea', makeMinutes: 0.8, shareOfDwell: 0.4 }],
    })),
  })),
};

const letters = [...smallHouses, ...smallHouses, demos[0]!].map((tree) => ({
  version: '0.1.0',
  scenario: { fileName: 'x.yaml', text: tree, options: {}, answer: { stock: [] } },
  templates: [],
}));

const FEW = ['--days', '20', '--threads', '1'] as const;
const SINCE = ['--since', '2026-01-05', '--date', '2026-06-01'] as const;
const demo = 'scenarios/1-commuter-bar.yaml';
const bakery = 'scenarios/4-bakery-corner.yaml';
const sales = 'shared/till/bakery-quarter-hours.csv';
const map = 'shared/till/bakery-saturdays.map.yaml';
/** @param also what is typed behind the file */
const typed = (name: string, also: readonly string[], agrees: boolean): Typed => ({
  words: (file) => [name, file, ...also],
  agrees,
});

export const kinds: Readonly<Record<string, Kind>> = {
  scenario: {
    texts: spoilt(scenarios),
    holds: scenarioCase,
    share: 46,
    ending: 'yaml',
    commands: [typed('check', [], false), typed('size', FEW, true)],
  },
  map: {
    texts: spoilt([treeOf(map)]),
    holds: mapCase,
    share: 8,
    ending: 'yaml',
    // Of all the sales, where the case has a few weeks of them: what is refused of one may be taken of the other.
    commands: [
      { words: (file) => ['till', sales, '--map', file, '--scenario', bakery], agrees: false },
    ],
  },
  sales: {
    texts: spoiltTable(bakeryRows),
    holds: salesCase,
    share: 2,
    ending: 'csv',
    commands: [typed('till', ['--map', map, '--scenario', bakery], true)],
  },
  counts: {
    texts: spoiltTable([
      'ware,counted,broken,retired,delivered',
      'medium-cup,40,2,0,12',
      'saucer,55,,1,',
      'teaspoon,70,0,0,0',
      'saucer,-5,1e9,x,',
    ]),
    holds: countsCase,
    share: 12,
    ending: 'csv',
    commands: [
      {
        words: (file) => ['stocktake', demo, '--counts', file, ...SINCE, ...FEW],
        agrees: false,
      },
    ],
  },
  sheet: {
    texts: spoiltTable(sheetRows, true),
    holds: sheetCase,
    share: 8,
    ending: 'csv',
    commands: [{ words: (file) => ['measure', '@house', '--read', file, ...FEW], agrees: true }],
  },
  sites: {
    texts: spoiltTable(siteRows),
    holds: sitesCase,
    share: 6,
    ending: 'csv',
    commands: [typed('sites', ['--base', '@kiosk', ...FEW], false)],
  },
  letter: {
    texts: spoilt(letters, letterOf),
    holds: letterCase,
    share: 6,
    ending: 'html',
    commands: [typed('verify', ['--threads', '1'], false)],
  },
  listed: {
    texts: spoilt([listed], (tree) => JSON.stringify(tree)),
    holds: listedCase,
    share: 12,
    ending: 'json',
    commands: [{ words: (file) => ['size', demo, '--day', file, '--threads', '1'], agrees: true }],
  },
};
