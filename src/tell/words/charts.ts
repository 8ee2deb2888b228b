/** Words of the charts: titles are sentences, axis titles carry units. */
export const chartWords = {
  timeOfDay: 'time of day',
  timeSinceOpening: 'hours:minutes after opening',
  of: (part: string, whole: string): string => `${part} of ${whole}`,
  risk: {
    title: (pieces: string, risk: string): string =>
      `With ${pieces} pieces in all, something runs out on ${risk} of days`,
    /** A whole sentence: what some pieces fewer or more would do. */
    beside: (pieces: string, money: string, risk: string, more: boolean): string =>
      more
        ? `${pieces} pieces more would cost ${money}: something would run out on ${risk} of days.`
        : `${pieces} pieces fewer would save ${money}: something would run out on ${risk} of days.`,
    besideLabel: (pieces: string, money: string, more: boolean): string =>
      more ? `${pieces} more: +${money}` : `${pieces} fewer: −${money}`,
    band: 'Every item grows and shrinks in proportion. The band is the 95 % interval.',
    whole: 'Show the whole curve',
    stock: 'pieces in all, every item in proportion',
    risk: '% of days on which something runs out',
    pieces: 'Pieces',
    riskHead: 'Chance of running out',
    low: '95 % interval, low',
    high: '95 % interval, high',
    chosen: (pieces: string): string => `chosen: ${pieces}`,
    allowed: (share: string): string => `at most ${share} allowed`,
    caption: 'Chance of running out against the stock',
    sentence: (pieces: string, risk: string, low: string, high: string): string =>
      `${pieces} pieces in all: something runs out on ${risk} of days (95 % interval ${low} to ${high})`,
  },
  tight: {
    stages: ['with guests', 'dirty', 'waiting to be washed', 'washed, drying'] as readonly string[],
    title: (pieces: string, time: string, one: boolean): string =>
      `A tight day: at ${time} ${pieces} ${one ? 'is' : 'are'} left`,
    none: (pieces: string): string => `no ${pieces}`,
    unused: 'A tight day: nothing leaves the shelf',
    unusedWhy: 'On a simulated day as busy as about 1 day in 20 no piece is used.',
    description: (name: string, stock: string, left: string): string =>
      `${name}, ${stock} pieces, on a simulated day as busy as about 1 day in 20: where each piece is, from below as in the legend. At the tightest moment ${left === '0' ? 'none' : left} ${left === '1' ? 'is' : 'are'} clean on the shelf.`,
    pieces: 'pieces off the shelf',
    stock: (count: string): string => `all ${count}`,
    left: (count: string): string => `${count} left`,
    caption: (name: string): string => `Where each ${name} is, on the tight day`,
  },
  places: {
    title: (name: string, off: string, time: string): string =>
      `${name}: on an average day at most ${off} are in use or being washed, at ${time}`,
    description: (name: string, main: string, share: string, stock: string): string =>
      `Where the pieces of ${name} are, from below as in the legend, on an average day. At the busiest moment ${share} of those not on the shelf are ${main}. One day in twenty reaches or passes the dashed line; the solid line is the stock of ${stock}.`,
    pieces: 'pieces not on the shelf',
    place: 'where',
    q95: 'reached on 1 day in 20',
    stock: (pieces: string): string => `stock: ${pieces}`,
    time: 'Time',
    caption: (name: string): string =>
      `Where the pieces of ${name} are, average of the days simulated`,
    stockHead: 'Stock',
    sentence: (
      time: string,
      off: string,
      stock: string,
      main: string,
      there: string,
      q95: string,
    ): string =>
      `${time}: on an average day ${off} of ${stock} are not on the shelf, ${there} of them ${main}; on 1 day in 20, ${q95} or more`,
    sentenceNone: (time: string, stock: string, q95: string): string =>
      `${time}: on an average day all ${stock} are on the shelf; on 1 day in 20, ${q95} or more are not`,
  },
  seats: {
    title: (seats: string, of: string, share: string, time: string): string =>
      `At ${time}, the busiest moment of an average day, ${seats} of ${of} seats are taken (${share})`,
    titleNone: 'On an average day no seat is taken',
    titleUnlimited: (seats: string, time: string): string =>
      `At ${time}, the busiest moment of an average day, ${seats} seats are taken`,
    description: (parties: string, minutes: string, time: string): string =>
      `Top: parties arriving; most come in the ${minutes} from ${time}: ${parties} on an average day. Bottom: seats taken, out of all seats.`,
    parties: (minutes: string): string => `parties in ${minutes}`,
    taken: 'seats taken',
    capacity: (seats: string): string => `seats: ${seats}`,
    time: 'Time',
    partiesHead: 'Parties arriving',
    takenHead: 'Seats taken',
    waitingHead: 'Parties waiting for a seat',
    caption: 'Parties arriving and seats taken, average of the days simulated',
    sentenceParties: (from: string, to: string, parties: string): string =>
      `${from} to ${to}: ${parties} parties arrive on an average day`,
    sentenceSeats: (
      time: string,
      taken: string,
      of: string | null,
      waiting: string | null,
    ): string =>
      `${time}: ${taken}${of === null ? '' : ` of ${of}`} seats taken on an average day${waiting === null ? '' : `, ${waiting} parties waiting for one`}`,
  },
  staff: {
    title: (what: string, share: string, time: string): string =>
      `The busiest are the ${what}: busy ${share} of the time around ${time}`,
    titleNone: 'No limits are set for staff or dishwashers',
    description: (racks: string, time: string): string =>
      `Top: how busy each is. Bottom: what waits for them; most racks wait around ${time}: ${racks} on an average day.`,
    descriptionNoWait:
      'Top: how busy each is. Bottom: what waits for them; racks hardly ever wait to be washed.',
    busy: 'busy, % of the time',
    waiting: 'waiting, number of racks and of drinks',
    who: {
      machines: 'dishwashers',
      makers: 'baristas',
      hands: 'dishwashing staff',
      clearers: 'clearing staff',
    },
    racks: 'racks to wash',
    drinks: 'drinks to make',
    time: 'Time',
    caption:
      'How busy people and dishwashers are, and what waits for them, average of the days simulated',
    sentenceBusy: (time: string, list: string): string =>
      `Around ${time}, busy: ${list} of the time`,
    busyOne: (who: string, share: string): string => `${who} ${share}`,
    sentenceNoWait: (time: string): string => `Around ${time}: nothing waits on an average day`,
    sentenceWaiting: (time: string, racks: string, drinks: string): string =>
      `Around ${time}: ${racks} racks wait to be washed and ${drinks} drinks to be made, on an average day`,
  },
  cooling: {
    title: (drink: string, degrees: string): string =>
      `A warmed cup keeps the first sip of ${drink} ${degrees} hotter`,
    description: (low: string, high: string, minute: string): string =>
      `Temperature of each drink through the stay, estimated for still air and a full vessel. The shaded band, ${low} to ${high}, is what most guests like; the dashed line at ${minute} is the first sip. What a guest leaves in the cup cools faster.`,
    x: 'minutes from pouring',
    y: (sign: string): string => `drink, ${sign}`,
    cold: 'cold vessel',
    warmed: 'warmed vessel',
    caption: (sign: string): string => `Temperature of the drinks from pouring, ${sign}`,
    minute: 'Minute',
    sentence: (minutes: string, drinks: string): string => `${minutes} after pouring: ${drinks}`,
    sentenceOne: (drink: string, cold: string, warmed: string): string =>
      `${drink} ${cold}, ${warmed} if the vessel was warmed`,
  },
  strength: {
    title: (apart: string, drinks: string): string =>
      `${apart} of ${drinks} drinks taste stronger or weaker to take away`,
    titleAlike: 'Every drink is as strong to take away as in the house',
    titleHouse: 'Strength of the drinks in the house',
    description: (band: string): string =>
      `Strength: grams of dissolved coffee in 100 ml of each drink, in the house and to take away. A grey bar is the band of ${band} either way of house strength within which they taste alike. A line through the takeaway mark shows how far it may be off, as nobody measured the paper cup.`,
    x: 'dissolved coffee, g in 100 ml',
    house: 'in the house',
    takeaway: 'to take away',
    caption: 'Strength of the drinks',
    drink: 'Drink',
    served: 'Served',
    strength: 'Dissolved coffee, g in 100 ml',
    liquid: (unit: string): string => `Liquid, ${unit}`,
    ratio: 'Away over house',
    sentence: (drink: string, where: string, strength: string): string =>
      `${drink}, ${where}: ${strength} g of dissolved coffee in 100 ml`,
    sentenceBetween: (sentence: string, low: string, high: string): string =>
      `${sentence} (between ${low} and ${high} until the paper cup is measured)`,
  },
  landed: {
    title: (name: string, first: string, last: string, pieces: string): string =>
      `${name}: ${first} a piece on the smallest order, ${last} on ${pieces}`,
    description: (name: string, costs: string): string =>
      `${costs} of one piece of ${name}, ordered by itself, for each number of cartons; the grey line is the price of the goods alone.`,
    size: 'pieces ordered',
    cost: (costs: string, currency: string): string =>
      `landed cost of a piece (${costs}), ${currency}`,
    chosen: (pieces: string): string => `${pieces} ordered`,
    caption: 'Landed cost against order size',
    cartons: 'Cartons',
    pieces: 'Pieces',
    landed: 'Landed a piece',
    goods: 'Goods a piece',
    step: 'What begins here',
    sentence: (
      pieces: string,
      cartons: string,
      one: boolean,
      landed: string,
      beside: string,
      goods: string,
    ): string =>
      `${pieces} pieces in ${cartons} ${one ? 'carton' : 'cartons'}: ${landed} each with ${beside}, ${goods} the goods alone`,
    sentenceStep: (sentence: string, step: string): string => `${sentence}; ${step}`,
  },
  shelf: {
    title: (name: string, orders: number, times: string, point: number | null): string =>
      point === null
        ? `${name}: one order for the life of the range`
        : orders < 0.05
          ? `${name}: no further order is expected`
          : `${name}: order when fewer than ${point} are counted, ${times} times on average`,
    description: (name: string, par: number, low: number): string =>
      `Expected pieces of ${name} on the shelf with the band that holds nine times in ten, against the par: the ${par} that must stand clean at opening. The band is lowest at ${low} pieces.`,
    pieces: 'pieces on the shelf',
    par: (pieces: string): string => `par ${pieces}`,
    reorder: (pieces: string): string => `order < ${pieces}`,
    caption: 'Pieces on the shelf',
    date: 'Date',
    expected: 'Expected',
    low: 'Below this 5 % of the time',
    high: 'At most this 95 % of the time',
    sentence: (date: string, mean: string, low: string, high: string): string =>
      `${date}: ${mean} pieces expected, nine times in ten ${low === high ? low : `${low} to ${high}`}`,
  },
  shapes: {
    wider: (by: string): string => `${by} wider`,
    title: (by: string, more: number, minutes: number): string =>
      `Cups ${by} wider: ${more === 0 ? 'as many' : `${Math.abs(more)} ${more > 0 ? 'more' : 'fewer'}`} to buy, ${minutes === 0 ? 'as much handling a day' : `${Math.abs(minutes)} min ${minutes > 0 ? 'more' : 'less'} handling a day`}`,
    sentence: (measure: string, shape: string, figure: string): string =>
      `${measure}, ${shape}: ${figure}`,
  },
  drawing: {
    top: (width: string, depth: string, stacks: number): string =>
      `The machine top from above, ${width} by ${depth}, with ${stacks} ${stacks === 1 ? 'stack' : 'stacks'}`,
    back: 'back',
    front: 'front: where the barista stands',
    onTop: (name: string, top: number, reserve: number, trigger: number | null): string =>
      `${name}: ${top} on top, ${reserve} in reserve${trigger === null ? '' : `; fetch at ${trigger} left`}`,
    empty: 'nothing stands here',
    fromAbove: 'Seen from above, to scale.',
    fromAboveAndSide: 'Seen from above, and one row from the side, to scale.',
    inside: (width: string): string => `${width} inside`,
    pieces: (n: number): string => `${n} ${n === 1 ? 'piece' : 'pieces'}`,
    slackAmple: (room: string): string => `The rim could be over ${room} wider in this pattern.`,
    slack: (room: string): string =>
      `The rim could be ${room} wider before this pattern holds fewer.`,
    cliff: (changed: string, then: number, now: number): string =>
      `With its ${changed}: ${then} instead of ${now}.`,
    binds: {
      opening: 'The opening of the compartments sets the number.',
      height: 'The height of the rack sets the number.',
      neighbour: 'Neighbours keep one more piece out.',
      wall: 'The walls keep one more piece out.',
      mass: 'The weight of the full rack sets the number.',
      kind: 'This kind of rack does not take this kind of piece.',
    },
    pattern: {
      grid: 'In a grid',
      staggered: 'In staggered rows',
      turned: 'Every second row turned round',
      mixed: 'Rows turned and shifted as drawn',
      compartments: 'One in each compartment',
      'on edge': 'On edge between the pegs',
      loose: 'Loose in the basket, drawn in order to show their number',
    },
    handles: (pattern: string, angle: string | null): string =>
      `${pattern}, handles ${angle === null ? 'straight' : `at ${angle}°`}.`,
  },
};
