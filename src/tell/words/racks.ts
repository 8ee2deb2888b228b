/** Words of the racks: table, drawing, washing. */
import type { RackLayout } from '../../racking/layout.js';

const binds: Record<RackLayout['binds'], string> = {
  opening: 'compartments',
  height: 'height',
  neighbour: 'neighbours',
  wall: 'walls',
  mass: 'mass',
  kind: 'kind of rack',
};

export const rackWords = {
  /** Heading of a drawing. */
  drawingTitle: (ware: string, pieces: number, rack: string): string =>
    `${ware}: ${pieces} in one ${rack.charAt(0).toLowerCase()}${rack.slice(1)}`,
  cliff: ({ dimension, changeMm, piecesThen }: NonNullable<RackLayout['cliff']>): string =>
    `${Math.abs(changeMm)} mm ${changeMm < 0 ? 'less' : 'more'} ${dimension === 'handleWidth' ? 'handle width' : dimension}: ${piecesThen}`,
  binds: (what: RackLayout['binds']): string => binds[what],
  tableTitle:
    'Pieces in a rack, worked out from their shapes (for the patterns tried; a cleverer one may hold more)',
  ware: 'Ware',
  rack: 'Rack',
  pieces: 'Pieces',
  area: 'Area\nused',
  loads: 'Loads\nper 100',
  bound: 'Held\nby',
  turns: 'Straight\n/ 45°',
  slack: 'Slack\nmm',
  near: 'Nearest step:\npieces then',
  mass: 'Loaded\nkg',
  lift: 'Lift\nindex',
  marks: '* the rack the scenario uses; + the rack with fewest loads for a day of this house',
  ample: 'ample',
  unknown: '–',
  noLoad: 'none',
  plan: (used: string | null, planned: string): string =>
    used === null
      ? `Were every rack full, the racks marked + would be ${planned} a day.`
      : used === planned
        ? `Were every rack full, they would be ${used} a day, in either.`
        : `Were every rack full, they would be ${used} a day in the racks in use, ${planned} in those marked +.`,
  glassApart:
    'Compartments keep glass apart by themselves; in an open rack the hands that load it must (common practice).',
  extenders: (name: string, rack: string, count: number): string =>
    `${name}, ${rack}: ${count} extender${count === 1 ? '' : 's'} for its height (the inner heights of racks are assumed unless measured).`,
  given: (name: string, pieces: number, rack: string, from: 'given' | 'class'): string =>
    `${name}: ${pieces} in one ${rack.toLowerCase()}, ${from === 'given' ? 'as the file gives it' : 'typical of its class (its shape is not known)'}.`,
  liftTold: (reach: number, from: number, to: number): string =>
    `Lift index: NIOSH lifting equation for a lift from ${from} to ${to} cm, hands ${reach} cm ahead of the ankles (state yours with --lift-from, --lift-to, --reach).`,
  washing: (days: number): string => `Washing in the rush, mean of ${days} days`,
  rate: (loads: string, racks: string, fill: string): string =>
    `${loads} loads an hour over the opening hours; ${racks} of our racks a day, ${fill} full on the mean.`,
  handling: (minutes: string, polishing: string): string =>
    `Hands are loading and unloading ${minutes} min a day${polishing === '0' ? '' : `, polishing ${polishing} min`}.`,
  noQueue: 'Racks hardly ever wait for a machine.',
  queue: (from: string, to: string): string =>
    `On the mean day racks wait for a machine from ${from} to ${to}.`,
  needed: (list: string): string =>
    `Racks in use at once, enough on the share of days promised: ${list}.`,
  placesTitle: 'Minutes of one use, by place',
  quartersTitle: 'Busy on the mean day, quarter hour by quarter hour (how many at once)',
  from: 'from',
  machines: 'machines',
  hands: 'hands',
  waiting: 'racks waiting',
  shapesTitle: (mm: number): string => `The same drinks in cups ${mm} mm wider`,
  shapesHead: [
    '',
    'Cups',
    'Cups\na rack',
    'Racks\na day',
    'Were all\nfull: cups',
    'Handling,\nmin a day',
    'Cost of\nall ware',
  ],
  shapesMoved: (name: string, rack: string): string =>
    `${name}, wider, no longer goes in its rack and is washed in: ${rack}.`,
  shapesPartFull: (fill: string): string =>
    `Racks go ${fill} full in this house: while part loads leave after their wait, a wider cup takes hardly more of them, and a rack that fills with fewer may even leave sooner. Shape tells once racks fill.`,
  asTheyAre: 'as they are',
  wider: (mm: number): string => `${mm} mm wider`,
  shapesAxis: {
    pieces: 'cups to buy',
    racks: 'racks washed a day',
    full: 'racks of cups a day, were every rack full',
    minutes: 'minutes of handling a day',
  },
};
