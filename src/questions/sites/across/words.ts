/** What is said of alternatives, uncertain inputs and measuring over sites, in words. Arguments are ready-made text. */
import type { Said } from '../../compare/answer.js';

export const say = {
  none: '–',
  heading: (base: string, sites: string): string => `${sites} run like ${base}: what if`,
  asItIs: 'As it is',

  compareLead: (years: string, confidence: string, held: string): string =>
    `Money over ${years}, ware included, against each site as it is and on the same days. All ${held} intervals hold together in ${confidence} of cases; a verdict stands only where the interval leaves no room for the contrary, where it also holds with rounds and waits a fifth off, and whatever staff time is worth.`,
  compareCaption: 'Each alternative over all sites',
  alternative: 'Alternative',
  sites: 'Sites',
  notAt: 'Not at',
  cheaper: 'Cheaper at',
  dearer: 'Dearer at',
  open: 'Not decided at',
  bestAt: 'Best at',
  all: 'At all of them',
  interval: '95 % interval',
  ware: 'Ware',
  chance: 'Cheaper in draws',
  planFor: 'To plan for',
  allNote:
    'At all of them: the sum over the sites that can have it. Sites have days of their own, so squares of errors add. It carries no verdict: that is given site by site.',

  tableCaption: 'Each site and alternative',
  site: 'Site',
  said: {
    cheaper: 'cheaper',
    dearer: 'dearer',
    alike: 'as good',
    open: 'too close to call',
    habits: 'turns with habits',
    staff: 'turns with what staff time is worth',
  } satisfies Record<Said, string>,
  verdict: 'Verdict',
  best: 'best here',
  difference: 'Difference',
  stockCost: 'Ware costs',
  spread: 'Over draws',
  cannot: (why: string): string => `not here: ${why}`,

  drawsHead: 'What the inputs leave open',
  drawsLead: (draws: string, days: string): string =>
    `${draws} draws of all inputs that have a range, each value as likely above as below what is written. They are quick readings on ${days} days: hold them against each other, not against the stock that is to be bought.`,
  sum: (alike: string, apart: string): string =>
    `The ware of all sites, in 9 draws of 10: ${alike} if what is off is off at every site alike, ${apart} if each site is off by itself.`,
  drawsCaption: 'What the ware of each site may cost, in 9 draws of 10',
  low: 'From',
  middle: 'Middle',
  high: 'To',

  measureHead: 'Where to measure first',
  measureLead: (now: string, then: string): string =>
    `The inputs leave the ware of all sites open from ${now}; a morning’s sheet at every site should leave ${then}. Sites count as independent: what is measured at one says nothing of another.`,
  measureCaption: 'What a morning’s sheet at one site narrows of the range of all',
  pieces: 'Pieces, from–to',
  wareRange: 'Ware, from–to',
  narrows: 'Narrows the sum by',
  narrowsPieces: 'Of pieces',
  withAbove: 'With those above',
  nothing: 'No site has an input that a sheet can measure and that moves the stock.',

  page: {
    only: 'only what is cheaper or dearer',
    shown: 'rows shown',
  },

  failed: (site: string, why: string): string => `${site} cannot be worked out: ${why}`,
  range: (from: string, to: string): string => `${from} to ${to}`,
  more: (rows: string): string => `The first ${rows} rows; the rest is in the files of --out.`,
};
