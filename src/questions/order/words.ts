/** What the order says, in words. Arguments are ready-made text unless their name says otherwise. */
const count = (pieces: number, one: string): string =>
  `${pieces.toLocaleString('en')} ${one}${pieces === 1 ? '' : 's'}`;

export const say = {
  kind: (days: string, name: string): string => `${days} of the kind “${name}”`,
  kinds: (kinds: string): string =>
    `The par holds on every kind of day; uses, breakage and takeaway cups are those of a year with ${kinds}.`,
  none: '–',
  total: 'Total',
  heading: (name: string, date: string): string => `Order for ${name}, ${date}`,
  lead: (pieces: string, total: string, included: string): string =>
    `Order ${pieces} pieces for ${total}${included === '' ? '' : `, ${included} included`}.`,
  leadUnquoted: (pieces: string): string =>
    `You need ${pieces} pieces. The scenario names no supplier, so there are no prices, cartons or freight: add them under supply.suppliers.`,
  leadUnsold: (pieces: string): string =>
    `You need ${pieces} pieces. No supplier in the scenario sells any of them: add quotes under supply.suppliers.`,
  partlySold: (names: string): string =>
    `No supplier sells ${names}: their pieces are counted here, their money is not.`,
  freight: 'freight',
  tax: 'tax',
  handling: 'your own handling',
  promiseEach: (review: string, each: string, together: string, more: boolean): string =>
    `Count every ${review} days and order as the table below says. Each ware then stays at or above its par until its next delivery with at least ${each} probability. All of them at once do so with ${together}${more ? ', as whole cartons bring more than each needs' : ''}. (Losses of different ware are taken as independent.)`,
  promiseTogether: (review: string, asked: string, together: string): string =>
    `Count every ${review} days and order as the table below says. All ware at once then stays at or above its par until its next delivery with ${together} probability; you asked for ${asked}. (Losses of different ware are taken as independent.)`,
  why: (par: string): string => `Why so many? The rush itself needs ${par} pieces (the par).`,
  whySteps: {
    untilDelivery: (pieces: string): string =>
      `${pieces} more are spares until the next count and delivery.`,
    after: (pieces: string, days: string): string =>
      `${pieces} more are spares for the rest of the ${days} days that this order lasts: one large order costs less than several small ones.`,
    cartons: (pieces: string): string => `${pieces} come from rounding up to whole cartons.`,
    onHand: (pieces: string): string => `You have ${pieces} already.`,
  },
  span: (from: string, to: string): string => `${from} to ${to}`,
  notProved:
    'A plain search chose this order: it meets every need and is good, but it is not proved to cost least. On a command line a solver looks for that proof.',
  notProvedWithin: (gap: string): string =>
    `This order meets every need and is good, but it is not proved to cost least: with so much ware and so many suppliers the proof takes too long. No plan can cost more than ${gap} less.`,
  orderCaption: 'What to order now',
  now: ['Ware', 'Par', 'Hold', 'Order', 'Cartons', 'Goods', 'Freight', 'Tax', 'Landed\neach'],
  notes:
    'Par: pieces that must be clean when you open. Hold: par and spares. Landed: goods, freight and tax, without your own handling.',
  bridgeCaption: 'From the par to the order',
  bridgeHead: { step: 'Step', smallest: 'Until more\ncan come', ordered: 'As\nordered' },
  bridgeHorizon: (days: string): string => `All ${days}\ndays`,
  bridge: {
    par: 'Par',
    untilDelivery: 'Spares until the next count and delivery',
    after: 'Spares for the rest of the time',
    onHand: 'There already',
    cartons: 'More from whole cartons',
    pieces: 'Pieces ordered',
    goods: 'Goods',
    freight: 'Freight',
    tax: 'Tax',
    handling: 'Own handling',
    total: 'Order',
    each: 'A piece, in all',
  },
  bridgeNote: (days: string): string =>
    `Until more can come: the smallest order that lasts until a delivery ordered at the next count. All ${days} days: everything at once, nothing later. All three are priced at today’s terms, as one order.`,
  bridgePieces: (par: string, pieces: string): string => `From a par of ${par} to ${pieces} pieces`,
  bridgeMoney: (total: string): string => `What makes up the ${total}`,
  bridgePiecesText:
    'Bars from the left: the par, the spares, what is there already (taken off), whole cartons, and the pieces ordered.',
  bridgeMoneyText: 'Bars from the left: goods, freight, tax and own handling add up to the order.',
  againCaption: 'When to order again',
  again: ['Ware', 'Order when\nfewer than', 'Next order\nexpected', 'Supplier', 'Sold\nagain'],
  againNote:
    'Order when a count finds fewer than this. A dash: no further order is expected while you keep the range.',
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
  next: 'Next steps of freight and price',
  suppliers: 'Suppliers side by side',
  alone: (name: string, opening: string, total: string, days: string): string =>
    `${name} alone: ${opening} now, ${total} over ${days} days.`,
  asOrdered: (opening: string, total: string, days: string): string =>
    `As ordered here: ${opening} now, ${total} over ${days} days.`,
  missing: (name: string, list: string): string => `${name} does not sell ${list}.`,
  warnings: 'Warnings',
  takeaway: (share: string): string =>
    `Paper cups and lids for a week: enough for ${share} of weeks`,
  takeawayHead: [
    'Item',
    'Mean\nweek',
    'House cup\nran out',
    'Enough\nfor',
    'Whole\nsleeves',
    'Price',
  ],
  takeawayNote:
    'Enough for: a week is made of days drawn from the study, each by itself. Two busy weeks in a row need more: keep a sleeve in hand.',
  saucers: 'Cups and saucers',
  fit: (cup: string, saucer: string, verdict: string): string => `${cup} on ${saucer}: ${verdict}`,
  pool: (saucer: string, gain: string): string => `${saucer}: ${gain}`,
  orphanCup: (cup: string): string => `${cup}: no saucer fits it.`,
  orphanSaucer: (saucer: string): string => `${saucer}: no cup fits it.`,
  storage: 'Where the pieces go',
  storageHead: ['Ware', 'On the\nmachine', 'In\nreserve', 'Fetch\nat'],
  storageCaption: 'On the machine and in reserve',
  machineTop: 'The machine top, to scale',
  machineTopText: (high: string): string =>
    `Stacks of up to ${high}, seen from above and to scale; numbers are pieces in a stack.`,
  fetching: (trips: string, waits: string, safe: string): string =>
    `${trips} trips to the reserve a rush; ${waits} drinks wait for one. With fetching, nothing runs out in ${safe} of rushes.`,
  coldCups: (share: string, byWare: string): string =>
    `${share} of the drinks that want a warm cup get a cold one from the reserve (${byWare}).`,
  coldOf: (ware: string, share: string): string => `${ware} ${share}`,
  allWarm: 'Every drink that wants a warm cup gets one from the machine.',
  withinReach:
    'Ware with none on the machine is taken straight from where it is: keep it within reach.',
  tooFewOnTop: (names: string): string =>
    `${names}: one drink takes more than fit on the machine, so staff take all of it from the reserve; put more there, or none.`,
  homeless: (ware: string, pieces: number): string =>
    `${ware}: ${pieces === 1 ? '1 piece has' : `${pieces} pieces have`} no place.`,
  cards: 'Reorder cards',
  cardRule: 'What to do',
  cautions: 'Safety',
  defers: 'Defer to',
  others: 'The same pictures for the other ware',
};
