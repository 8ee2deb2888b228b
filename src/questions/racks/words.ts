/** Words of the racks: findings, tables, drawings, washing. Arguments are ready-made text. */
import type { BoundBy } from '../../racking/bound.js';
import type { Binding } from '../../racking/layout.js';

const binds: Record<Binding, string> = {
  opening: 'compartments',
  height: 'height',
  neighbour: 'neighbours',
  wall: 'walls',
  mass: 'weight',
  kind: 'kind of rack',
};

const boundBy: Record<BoundBy, string> = {
  area: 'area of the rack',
  circles: 'circles in a rectangle',
  compartments: 'compartments',
  pegs: 'pegs and gap',
  mass: 'weight',
};

export const rackWords = {
  head: 'How many pieces a rack holds',
  kindOfDay: (name: string): string =>
    `These are days of the kind “${name}”, on which the stock has least to spare.`,
  lead: (counts: string): string => `One full rack holds: ${counts}.`,
  count: (name: string, pieces: string): string => `${name} ${pieces}`,
  noShape:
    'No shape is known, so we cannot work out how many pieces a rack holds. Give rim and height in the scenario.',

  measure: (name: string, change: string, then: string, now: string): string =>
    `Measure this first: ${name}. With its ${change}, ${then === '0' ? 'it no longer fits its rack' : `a rack holds ${then} instead of ${now}`}.`,
  tryRack: (name: string, least: string, most: string, from: string, to: string): string =>
    `${name}: ${least} to ${most} in a rack, because its rim may be ${from} to ${to}. Load one rack and count.`,
  tryOnEdge: (name: string, pieces: string, usual: string, gap: string, given: boolean): string =>
    `${name}: ${pieces} in a peg rack is more than the usual ${usual} (common practice, no source). We keep at least ${gap} between two faces${given ? ', as your file says' : ', which we assume'}. Try one rack and count.`,
  usual: (fewest: string, most: string): string => `${fewest} to ${most}`,
  fill: (racks: string, fill: string): string =>
    `You wash ${racks} racks a day. An average rack is ${fill} full.`,
  plan: (used: string | null, fewest: string): string =>
    used === null
      ? `If every rack were full, the best choice of racks would take ${fewest} a day.`
      : used === fewest
        ? `If every rack were full, you would wash ${used} a day. No other choice of racks takes fewer.`
        : `If every rack were full, you would wash ${used} a day. The best choice of racks would take ${fewest}.`,
  better: (name: string, rack: string, then: string, now: string): string =>
    `${name}: the ${rack} holds ${then}, yours ${now}.`,
  heaviest: (name: string, mass: string, caution: string): string =>
    `Lifting your heaviest rack when it is full (${name}, ${mass}) is ${caution}`,
  noQueue: 'Racks hardly ever wait for a dishwasher.',
  queue: (from: string, to: string): string =>
    `On an average day racks wait for a dishwasher from ${from} to ${to}.`,

  warnings: 'Warnings',
  problem: (name: string, rack: string, problem: string): string => `${name}, ${rack}: ${problem}`,
  extenders: (name: string, rack: string, count: number, shown: string): string =>
    `${name}, ${rack}: add ${shown} extender${count === 1 ? '' : 's'}, because it is tall. We assume the inner height of a rack unless you give it.`,
  glassApart:
    'Compartments keep glasses apart. In an open rack, leave a gap between glasses when you load it (common practice, no source).',

  mostFold: 'The most that a rack could hold',
  mostTitle: 'What we found, and what no way of loading can exceed',
  found: 'Found',
  most: 'At most',
  mostBy: 'Because of',
  boundBy,
  mostNote:
    'A cleverer way to load may hold more than we found, but never more than “At most”. Area of the rack: the pieces with half their gap around them cannot cover more than there is. Circles in a rectangle: as many discs as the largest circle in each piece allows (N. Oler, Acta Mathematica 105, 1961).',
  usedCaption: 'Pieces in one rack, in the racks you use',
  otherCaption: 'Pieces in one rack, in other racks',
  otherRacks: 'The same items in other racks',
  ware: 'Item',
  rack: 'Rack',
  pieces: 'Pieces',
  bound: 'Limited by',
  near: 'Nearest change',
  mass: 'Full\nrack',
  lift: 'Lift\nindex',
  turns: 'Handles straight / at 45°',
  area: 'Area used',
  slack: 'Room for\na wider rim',
  loads: 'Racks for 100',
  binds,
  planned: (rack: string): string => `${rack} (fewest racks)`,
  ample: 'plenty',
  unknown: '–',
  noLoad: 'do not lift',
  searched:
    'We worked out these numbers from the shapes, for the usual ways of loading. A cleverer way may hold more. “Nearest change” is the smallest change of one measure that changes the number, and the number it then is.',

  counts: 'Where the numbers come from',
  given: (name: string, pieces: string, rack: string): string =>
    `${name}: ${pieces} in one ${rack}, as your file says.`,
  typical: (name: string, pieces: string, rack: string): string =>
    `${name}: ${pieces} in one ${rack}, typical for its kind. Its shape is not known.`,
  givenBeside: (name: string, given: string, rack: string, computed: string): string =>
    `${name}: your file says ${given} in one ${rack}, and the simulation uses that. From its shape we work out ${computed}. Load one rack and count.`,
  classBeside: (name: string, typical: string, rack: string, computed: string): string =>
    `${name}: ${typical} in one ${rack} is typical for its kind. From its own measures we work out ${computed}, and the simulation uses that.`,

  fits: (name: string, pieces: string, rack: string): string =>
    `${name}: one ${rack} holds ${pieces}.`,
  cliff: (change: string, then: string): string =>
    then === '0'
      ? `With its ${change} it no longer fits.`
      : `With its ${change} a rack would hold ${then}.`,
  noCliff: 'No small change of its measures changes that.',
  nearCell: (change: string, then: string): string => `${change}: ${then}`,
  /** Heading of a drawing. */
  drawingTitle: (ware: string, pieces: string, rack: string): string =>
    `${ware}: ${pieces} in one ${rack}`,
  drawingTable: 'The drawing in figures',
  drawn: (text: string): string => `${text} Seen from above, to scale.`,

  liftNote: (
    assumed: boolean,
    from: string,
    to: string,
    reach: string,
    anHour: string,
    hours: 1 | 2 | 8,
  ): string =>
    `Lift index: the weight lifted, divided by the limit of the NIOSH lifting equation; above 1 is too much. ${assumed ? 'We assume' : 'You gave'} a lift from ${from} to ${to} with the hands ${reach} ahead of the ankles. The simulation gives ${anHour} lifts an hour; the shift counts as ${hours === 1 ? 'up to 1 hour' : `up to ${hours} hours`}.`,
  liftOptions: 'Give your own lift with --lift-from, --lift-to and --reach.',

  washing: (days: string): string => `Washing in the rush, average of ${days} days`,
  rate: (loads: string): string =>
    `The dishwasher runs ${loads} loads an hour over the opening hours.`,
  handling: (minutes: string, polishing: string): string =>
    `Loading and unloading takes ${minutes} a day.${polishing === '' ? '' : ` Polishing takes ${polishing}.`}`,
  needed: (list: string): string =>
    `So that you run short of racks no more often than of cups, have: ${list}.`,
  neededRack: (count: string, rack: string): string => `${count} × ${rack}`,
  placesFold: 'Where a piece spends its time',
  placesTitle: 'Minutes a piece spends at each place, each time it is used',
  quartersFold: 'The wash-up every 15 minutes',
  quartersTitle: 'How many are busy at once on an average day',
  from: 'From',
  machines: 'Dishwashers',
  hands: 'People at the dishwasher',
  waiting: 'Racks waiting',

  shapesCaption: (wider: string, days: string): string =>
    `The same drinks in cups ${wider} wider (both worked out on ${days} days, so pieces may differ by a few from the answer)`,
  shapesTable: 'Two shapes of cup',
  shape: 'Shape',
  shapesHead: [
    'Cups to buy',
    'Cups a rack',
    'Racks a day',
    'Racks of cups a day, if full',
    'Handling a day',
    'Cost of all pieces',
  ],
  shapesMoved: (name: string, rack: string): string =>
    `The wider ${name} no longer fits its rack. We wash it in: ${rack}.`,
  shapesPartFull: (fill: string): string =>
    `Here racks leave ${fill} full, because a part-full rack does not wait long. So wider cups hardly mean more racks. The shape matters once racks fill up.`,
  asTheyAre: 'as they are',
  wider: (by: string): string => `${by} wider`,
  shapesAxis: {
    pieces: 'cups to buy',
    racks: 'racks washed a day',
    full: 'racks of cups a day, if every rack were full',
    minutes: 'minutes of handling a day',
  },
  cautions: 'Take care',
};
