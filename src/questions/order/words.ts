/** What the order says, in words. Arguments are ready-made text unless their name says otherwise. */
const count = (pieces: number, one: string): string =>
  `${pieces.toLocaleString('en')} ${one}${pieces === 1 ? '' : 's'}`;

export const say = {
  kind: (days: string, name: string): string => `${days} of the kind “${name}”`,
  kinds: (kinds: string): string =>
    `The par is enough on every kind of day. Uses, breakage and takeaway cups are those of a year with ${kinds}.`,
  none: '–',
  total: 'Total',
  heading: (name: string, date: string): string => `Order for ${name}, ${date}`,
  lead: (pieces: string, total: string, included: string): string =>
    `Order ${pieces} pieces for ${total}${included === '' ? '' : `, ${included} included`}.`,
  leadUnquoted: (pieces: string): string =>
    `You need ${pieces} pieces. The scenario names no supplier, so there are no prices, cartons or freight: add a supplier (supply.suppliers).`,
  leadUnsold: (pieces: string): string =>
    `You need ${pieces} pieces. No supplier in the scenario sells any of them: add what they sell (supply.suppliers, quotes).`,
  partlySold: (names: string): string =>
    `No supplier sells ${names}: the pieces are counted here, but their cost is not.`,
  allowing: (inputs: string, held: string, low: string, high: string): string =>
    `The par allows for inputs that are not known exactly: with all ${inputs} anywhere in their ranges it lasts on ${held} of days (95 % interval ${low} to ${high}).`,
  allowed: (added: string, plain: string): string =>
    `That takes ${added} pieces more; without them it would last on ${plain} of such days.`,
  safety: (more: string, plain: string): string =>
    `This safety costs ${more}: the order without it comes to ${plain}.`,
  safetyUnquoted: (more: string): string => `This safety costs ${more} at the prices in the file.`,
  enough: (inputs: string, level: string): string =>
    `With all ${inputs} inputs that are not known exactly anywhere in their ranges, the par lasts on ${level} of days: nothing is added for them.`,
  /** A cost in a sentence. */
  ownCost: (name: string): string => `your ${name}`,
  promiseEach: (review: string, each: string, together: string, more: boolean): string =>
    `Count every ${review} days and order as the table below says. Each item then stays at or above its par until its next delivery with a chance of at least ${each}. For all items together the chance is ${together}${more ? ', because whole cartons bring more than you need' : ''}. (Losses of different items are taken as independent.)`,
  promiseTogether: (review: string, asked: string, together: string): string =>
    `Count every ${review} days and order as the table below says. All items then stay at or above their par until the next delivery with a chance of ${together}; you asked for ${asked}. (Losses of different items are taken as independent.)`,
  why: (par: string): string =>
    `Why so many? The rush itself needs ${par} pieces: that is the par.`,
  whySteps: {
    untilDelivery: (pieces: string): string =>
      `${pieces} more are spares until the next count and delivery.`,
    after: (pieces: string, days: string): string =>
      `${pieces} more are spares for the rest of the ${days} days that this order lasts: one large order costs less than several small ones.`,
    afterUnquoted: (pieces: string, days: string): string =>
      `${pieces} more are spares for the rest of the ${days} days that this order is to last.`,
    cartons: (pieces: string): string => `${pieces} come from rounding up to whole cartons.`,
    onHand: (pieces: string): string => `You have ${pieces} already.`,
  },
  span: (from: string, to: string): string => `${from} to ${to}`,
  notProved:
    'A plain search chose this order: it meets every need and is good, but it is not proved to cost least. On a command line a solver looks for that proof.',
  notProvedWithin: (gap: string): string =>
    `This order meets every need and is good, but it is not proved to cost least: with so many items and suppliers the proof takes too long. The cheapest possible plan costs at most ${gap} less.`,
  orderCaption: 'What to order now',
  now: { item: 'Item', par: 'Par', hold: 'With\nspares', order: 'Order', cartons: 'Cartons' },
  landedEach: 'Landed\neach',
  notes:
    'Par: pieces that must be clean when you open. With spares: the par and what you hold in store.',
  landedNote: (landed: string, own: string): string => `Landed: ${landed}, without ${own}.`,
  bridgeCaption: 'From the par to the order',
  bridgeHead: { step: 'Step', smallest: 'Until more\ncan come', ordered: 'As\nordered' },
  bridgeHorizon: (days: string): string => `All ${days}\ndays`,
  bridge: {
    par: 'Par',
    untilDelivery: 'Spares until the next count and delivery',
    after: 'Spares for the rest of the time',
    onHand: 'You have already',
    cartons: 'More from whole cartons',
    pieces: 'Pieces ordered',
    total: 'Order in all',
    each: 'For each piece',
  },
  /** What the columns beside the order itself mean; each is said where its column stands. */
  bridgeNotes: {
    smallest:
      'Until more can come: the smallest order that lasts until a delivery ordered at the next count.',
    horizon: (days: string): string => `All ${days} days: everything at once, nothing later.`,
    horizonToo: (days: string): string =>
      `As ordered lasts all ${days} days: no later order is expected.`,
    priced: 'Each column is priced at today’s terms, as one order.',
  },
  bridgePieces: (par: string, pieces: string): string => `From a par of ${par} to ${pieces} pieces`,
  bridgeMoney: (total: string): string => `What makes up the ${total}`,
  bridgePiecesText:
    'Bars from the left: the par, the spares, what you have already (taken off), whole cartons, and the pieces ordered.',
  bridgeMoneyText: (costs: string): string => `Bars from the left: ${costs} add up to the order.`,
  againCaption: 'When to order again',
  again: [
    'Item',
    'Order when\nfewer than',
    'Next order\nexpected',
    'Supplier',
    'Still sold\nlater',
  ],
  againNote:
    'Order again when a count finds fewer than this. The day expected is for usual losses; spares are for bad luck too, so it may be well after the days that this order is to last. A dash: you will probably not need to order again while you keep this range.',
  againUnquoted: (days: string): string =>
    `A delivery is taken to come ${days} days after the order (assumed).`,
  consignment: (
    name: string,
    cartons: number,
    mass: string,
    freight: string,
    step: string,
    total: string,
    delivery: string,
  ): string =>
    `From ${name}: ${count(cartons, 'carton')}${mass}, freight ${freight} (${step}), ${total} in all; delivery expected ${delivery}.`,
  mass: (kg: string): string => `, ${kg} kg`,
  next: 'What a larger order would change',
  suppliers: 'Suppliers side by side',
  alone: (name: string, opening: string, total: string, days: string): string =>
    `${name} alone: ${opening} now, ${total} over ${days} days.`,
  oneSupplier: (name: string, more: string, days: string, deliveries: string): string =>
    `${name} alone costs ${more} more over ${days} days, with one delivery now in place of ${deliveries}: choose it if that is simpler for you.`,
  asOrdered: (opening: string, total: string, days: string): string =>
    `As ordered here: ${opening} now, ${total} over ${days} days.`,
  overTime: (opening: string, total: string, days: string): string =>
    `${opening} now, ${total} over ${days} days.`,
  overTimeNote: 'Over all the days: this order, the later ones, and what it costs to keep spares.',
  overTimeCaption: 'Over the whole time',
  missing: (name: string, list: string): string => `${name} does not sell ${list}.`,
  warnings: 'Warnings',
  takeaway: (share: string): string =>
    `Paper cups and lids for a week: enough for ${share} of weeks`,
  takeawayHead: [
    'Item',
    'Average\nweek',
    'Because cups\nran out',
    'Busy\nweek',
    'Whole\nsleeves',
    'Price',
  ],
  takeawayNote:
    'Busy week: so many are enough for the share of weeks named above. Two busy weeks in a row need more: keep a sleeve in hand.',
  saucers: 'Cups and saucers',
  fit: (cup: string, saucer: string, verdict: string): string => `${cup} on ${saucer}: ${verdict}`,
  pool: (saucer: string, gain: string): string => `${saucer}: ${gain}`,
  orphanCup: (cup: string): string => `${cup}: no saucer fits it.`,
  orphanSaucer: (saucer: string): string => `${saucer}: no cup fits it.`,
  storage: 'Where the pieces go',
  storageHead: ['Item', 'On the\nmachine', 'In\nreserve', 'Fetch\nat'],
  storageCaption: 'On the machine and in reserve',
  machineTop: 'The machine top, to scale',
  machineTopText: (high: string): string =>
    `Stacks of up to ${high}, seen from above and to scale; numbers are pieces in a stack.`,
  fetching: (trips: string, waits: string, safe: string): string =>
    `In a rush, staff fetch from the reserve ${trips} times; ${waits === '0.0' || waits === '0' ? 'no drink waits' : `${waits} drinks wait`} for that. With fetching, nothing runs out in ${safe} of rushes.`,
  coldCups: (share: string, byWare: string): string =>
    `${share} of the drinks that want a warm cup get a cold one from the reserve (${byWare}).`,
  coldOf: (ware: string, share: string): string => `${ware} ${share}`,
  allWarm: 'Every drink that wants a warm cup gets one from the machine.',
  withinReach:
    'Items with none on the machine are taken straight from where they stand: keep them within reach.',
  tooFewOnTop: (names: string): string =>
    `${names}: one drink takes more than fit on the machine, so staff take all of them from the reserve. Put more on the machine, or none.`,
  homeless: (ware: string, pieces: number): string =>
    `${ware}: the shelves in reserve have no room for ${pieces === 1 ? '1 piece' : `${pieces} pieces`}.`,
  cards: 'Reorder cards',
  cardRule: 'What to do',
  cautions: 'Safety',
  defers: 'Follow',
  others: 'The same pictures for the other items',
};
