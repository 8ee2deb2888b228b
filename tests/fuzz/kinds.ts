/** Each kind of file that is fuzzed: how it is made, and what must hold of it. */
import type fc from 'fast-check';
import { parse } from 'yaml';
import { spoilt, spoiltTable } from './generators.js';
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

export interface Kind {
  readonly texts: fc.Arbitrary<string>;
  readonly holds: (text: string) => Promise<Outcome>;
  /** Of a hundred cases, how many are of this kind. */
  readonly share: number;
}

const treeOf = (file: string): Record<string, unknown> =>
  parse(fileOf(file)) as Record<string, unknown>;

const scenarios = ['1-commuter-bar', '2-brunch-room', '3-great-hall', '4-bakery-corner'].map(
  (name) => treeOf(`scenarios/${name}.yaml`),
);
/** Without what only the comparison reads, so that more of the changes fall on the rush. */
const rushes = scenarios.map(
  ({ alternatives: _a, supply: _s, suit: _u, storage: _t, ...rest }) => rest,
);

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

const letters = scenarios.slice(0, 2).map((tree) => ({
  version: '0.1.0',
  scenario: { fileName: 'x.yaml', text: tree, options: {}, answer: { stock: [] } },
  templates: [],
}));

export const kinds: Readonly<Record<string, Kind>> = {
  scenario: { texts: spoilt([...rushes, ...rushes, ...scenarios]), holds: scenarioCase, share: 46 },
  map: {
    texts: spoilt([treeOf('shared/till/bakery-saturdays.map.yaml')]),
    holds: mapCase,
    share: 8,
  },
  sales: { texts: spoiltTable(bakeryRows), holds: salesCase, share: 2 },
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
  },
  sheet: { texts: spoiltTable(sheetRows, true), holds: sheetCase, share: 8 },
  sites: { texts: spoiltTable(siteRows), holds: sitesCase, share: 6 },
  letter: { texts: spoilt(letters, letterOf), holds: letterCase, share: 6 },
  listed: { texts: spoilt([listed], (tree) => JSON.stringify(tree)), holds: listedCase, share: 12 },
};
