/** What the answer about all sites says, in words. Arguments are ready-made text unless their name says otherwise. */
import type { SiteAnswer } from './site-answer.js';
import type { Feature } from './site-guide.js';

export const say = {
  none: '–',
  heading: (base: string, sites: string): string => `${sites} run like ${base}`,
  siteCount: (count: number, text: string): string => `${text} ${count === 1 ? 'site' : 'sites'}`,
  lead: (pieces: string, cost: string, level: string): string =>
    `Together they need ${pieces} pieces worth ${cost}, so that at each site nothing runs out on ${level} of rushes.`,
  spend: (add: string, spend: string): string =>
    `Of these, ${add} are to be bought, for ${spend} by the piece.`,
  failed: (site: string, why: string): string => `${site} cannot be sized: ${why}`,

  caption: 'Each site: pieces, level, cost',
  site: 'Site',
  seats: 'Seats',
  guests: 'Guests an hour',
  pieces: 'Pieces',
  add: 'To buy',
  level: 'Level',
  interval: '95 % interval',
  cost: 'Cost',
  toPay: 'To pay',
  busiest: 'Busiest',
  warnings: 'Warnings',
  total: 'All',
  drop: 'Drop',
  opening: 'Opens',
  unlimited: 'any',
  stage: {
    machines: 'dishwashers',
    makers: 'makers',
    seats: 'seats',
    clearers: 'clearing',
    hands: 'dishwashing',
  } satisfies Record<keyof SiteAnswer['busy'], string>,
  wareCaption: 'Each site: pieces of each item',

  mindHead: 'Before you buy',
  mind: (site: string, what: string): string => `${site}: ${what}`,
  overload: (stage: string, load: string): string =>
    `${stage} get ${load} of the work that they can do in the worst hour`,

  orderHead: 'The order for all sites together',
  orderLead: (opening: string, costs: string, drops: string, date: string): string =>
    `Ordered on ${date}, it costs ${opening} with ${costs}, sent to ${drops}.`,
  dropCount: (count: number, text: string): string => `${text} ${count === 1 ? 'drop' : 'drops'}`,
  dropName: (drop: string): string => (drop === '' ? 'One drop' : `Drop ${drop}`),
  dropCaption: (drop: string, sites: string): string => `${drop}: ${sites}`,
  par: 'Needed clean',
  have: 'There',
  ordered: 'Ordered',
  cartons: 'Cartons',
  supplier: 'Supplier',
  landed: (costs: string): string => `With ${costs}`,
  alone: (opening: string, total: string, horizon: string, saved: string): string =>
    `If each site ordered for itself: ${opening} for the first order and ${total} over ${horizon} days; together it is ${saved} less.`,
  oneDrop: (total: string, pooled: string): string =>
    `All to one drop would come to ${total} over the same time, against ${pooled}, without bringing it on to the sites.`,
  allOrders: (total: string, horizon: string): string =>
    `All orders over ${horizon} days with what holding costs: ${total}.`,
  proved: (gap: string): string =>
    `A solver proved each of these plans cheapest, to within ${gap}.`,
  notProved: (gap: string): string =>
    `Not proved cheapest: the least possible is at most ${gap} below.`,
  sparesAt: {
    sites: 'Each site keeps spares of its own.',
    drop: 'Spares are kept at the drop, for all its sites.',
  },
  breaks: 'Price breaks and free freight count for each drop by itself.',
  unsold: (list: string): string => `No supplier sells ${list}: not in the order.`,

  sparesHead: 'Spares: at each site, or in one place',
  sparesLead: (review: string): string =>
    `Spares cover what breaks and walks off until what is ordered at the next count, ${review} days on, is delivered. Kept in one place they are shared, so fewer are enough, if missing pieces are sent before the next opening.`,
  sparesCaption: 'Spares in all',
  item: 'Item',
  each: (chance: string): string => `At the sites, each sure to ${chance}`,
  allAtOnce: (chance: string): string => `At the sites, all at once sure to ${chance}`,
  central: (chance: string): string => `In one place, all at once sure to ${chance}`,

  listHead: 'One list for all sites',
  listCaption: 'Kinds in use',
  usedAt: 'Sites',
  fewest: (count: string, kinds: string, drinks: string): string =>
    `The fewest kinds with which every drink still has a whole setting: ${count}, without ${kinds}. Then served as their fall-back: ${drinks}.`,
  fewestAll: 'No kind can go: each is in a setting that has no fall-back without it.',

  rollHead: 'When to order what',
  rollLead: (cost: string): string =>
    `Ordered this way, the openings cost ${cost}, keeping included.`,
  rollOnce: (once: string): string => `All at once for each drop they would cost ${once}.`,
  rollIsOnce: 'Each drop gets all of it at once.',
  rollEach: (each: string): string => `With an order for each opening they would cost ${each}.`,
  rollSpares: (review: string, opening: string): string =>
    `These orders bring what must be clean and spares until what is ordered at the next count, ${review} days on, is delivered. The order for all sites above (${opening}) may bring spares for longer, where that costs less over the whole time: so the sums differ.`,
  rollCaption: (chance: string): string =>
    `Order by this day, to have it the day before opening in ${chance} of cases`,
  orderBy: 'Order by',
  forOpening: 'For opening',
  late: ' (late)',
  forSites: 'Sites',
  what: 'What',
  undated: (list: string): string => `Without a day of opening, so not in the calendar: ${list}.`,

  guideHead: 'A guide from these sites',
  guideLead:
    'A fixed number of pieces, and so many more for each guest who sits down in the busiest hour. The errors are for sites that were left out when the rule was made.',
  guideCaption: (sites: string): string => `Fitted from ${sites}`,
  fixed: 'Fixed',
  perGuest: 'For each guest an hour who sits',
  typical: 'Typical error',
  worst: 'Largest error',
  allWare: 'All items',
  outlier: (site: string, pieces: string, foretold: string, why: string): string =>
    `${site} sticks out: it needs ${pieces} pieces where the other sites suggest ${foretold}${why}.`,
  because: (what: string, value: string, middle: string): string =>
    `; what differs most is ${what}, ${value} against ${middle}`,
  feature: {
    stayMinutes: 'how long guests stay',
    takeaway: 'the share who take away',
    guestsASeat: 'guests an hour for each seat',
    machinesBusy: 'how busy the dishwashers are',
    clearersBusy: 'how busy clearing is',
  } satisfies Record<Feature, string>,

  informs:
    'This helps you decide what to buy; it is not a guarantee. Local codes, the machine’s manual and licensed trades go before anything printed here.',
  made: (version: string, seed: string): string => `Made by cuptide ${version}, seed ${seed}.`,

  page: {
    filter: 'Show sites whose name, id or drop has',
    only: 'only those with warnings',
    shown: 'sites shown',
    sort: 'Click the head of a column to sort by it.',
    course: (ware: string): string =>
      `Off the shelf through the rush: ${ware}. Line: middle day; band: up to 19 days of 20; rule: the stock.`,
    letter: 'letter',
    picture: 'Through the rush',
  },
};
