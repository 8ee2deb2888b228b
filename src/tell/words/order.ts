/** Words of the order: sheet, reorder cards, storage, stocktake. */
import type { SaucerFit } from '../../ordering/saucers.js';

const fits: Record<SaucerFit['reason'], string> = {
  given: 'fits, as the file says',
  computed: 'fits, by their measures',
  'foot too wide': 'foot too wide',
  'cup would slide': 'cup would slide',
  'colours differ': 'colours differ',
  'measures missing': 'measures missing',
};

export const orderWords = {
  beyondStock: (stock: string): string =>
    `The pieces that the rush needs cost ${stock} by themselves; the rest is spares for what breaks and walks off, whole cartons, freight and tax, as far as there are any.`,
  heading: (name: string, date: string): string => `Order for ${name}, ${date}`,
  sentence: (pieces: string, total: string, confidence: string, review: string): string =>
    `Order ${pieces} pieces for ${total} in all, freight, tax and own handling included; with a count every ${review} days the pieces at opening then stay at or above the par until the next delivery with ${confidence} probability.`,
  sentenceUnquoted: (pieces: string): string =>
    `${pieces} pieces are needed. No supplier is named, so there is no price, carton or freight to weigh: add them under supply.suppliers in the scenario.`,
  head: [
    'Ware',
    'Par',
    'Hold',
    'Order\npieces',
    'Cartons',
    'Supplier',
    'Repeat\nsupply',
    'Goods',
    'Freight',
    'Tax',
    'Landed\na piece',
    'Reorder\nbelow',
    'Next order',
  ],
  none: '–',
  total: 'Total',
  notes:
    'Par: pieces that must stand clean at opening. Hold: par and spares. Reorder below: order when a count finds fewer. Next order: when that is expected; – is not within the horizon.',
  consignment: (
    name: string,
    cartons: number,
    mass: string,
    freight: string,
    step: string,
    total: string,
    delivery: string,
  ): string =>
    `From ${name}: ${cartons} ${cartons === 1 ? 'carton' : 'cartons'}${mass}, freight ${freight} (${step}), ${total} with tax and own handling; expected ${delivery}.`,
  next: 'Next steps of freight and price',
  suppliers: 'Suppliers side by side',
  alone: (name: string, opening: string, total: string): string =>
    `${name} alone: ${opening} now, ${total} over the horizon.`,
  asOrdered: (opening: string, total: string): string =>
    `As ordered here: ${opening} now, ${total} over the horizon.`,
  missing: (name: string, list: string): string => `${name} does not sell ${list}.`,
  takeaway: 'Takeaway, a week',
  takeawayHead: [
    '',
    'Pieces\n(mean)',
    'of these in place of\na house cup',
    'Whole\nsleeves',
    'Price',
  ],
  saucers: 'Cups and saucers',
  fit: (cup: string, saucer: string, reason: SaucerFit['reason'], clearance: string): string =>
    `${cup} on ${saucer}: ${fits[reason]}${clearance}`,
  play: (mm: string): string => ` (${mm} mm of play)`,
  tooWide: (mm: string): string => ` (by ${mm} mm)`,
  pool: (saucer: string, gain: string): string => `${saucer}: ${gain}`,
  orphanCup: (cup: string): string => `${cup} has no saucer that takes it.`,
  orphanSaucer: (saucer: string): string => `${saucer} takes no cup.`,
  storage: 'Where the pieces stand',
  machineTop: 'The machine top, to scale',
  storageHead: ['Ware', 'On the machine', 'In reserve', 'Fetch at'],
  fetching: (trips: string, waits: string, safe: string): string =>
    `${trips} trips to the reserve a rush; ${waits} drinks wait for one (waiting is not being short); nothing runs out in ${safe} of rushes.`,
  withinReach:
    'Ware with none on the machine is taken straight from where it stands, without a fetch: keep it within reach.',
  tooFewOnTop: (names: string): string =>
    `${names}: fewer stand on the machine than one drink takes, so drinks take them straight from wherever they stand, as if from one place; put more there, or none.`,
  homeless: (ware: string, pieces: number): string =>
    `${ware}: ${pieces === 1 ? '1 piece has' : `${pieces} pieces have`} no place.`,
  cards: 'Reorder cards',
  warnings: 'Mind',
  stocktake: (days: number): string => `Stocktake after ${days} ${days === 1 ? 'day' : 'days'}`,
  stocktakeHead: [
    'Ware',
    'There\nwere',
    'Counted',
    'Retired',
    'Missing',
    'Missing\nper 1000 uses',
    'Broken per 1000 uses\nassumed → now',
    'Order\nbelow',
    'Order\nnow',
  ],
  seen: (rate: string, low: string, high: string): string => `${rate} (${low} to ${high})`,
  update: (before: string, after: string): string => `${before} → ${after}`,
  updateNote:
    'Assumed and now: the mean of a gamma law of the rate, before and after this count (a gamma–Poisson update); in brackets a 95 % interval.',
  uncounted: (list: string): string => `Not counted: ${list}.`,
};
