/** Words of the racks: table, drawing, washing. */
import type { RackLayout } from '../../racking/layout.js';

const binds: Record<RackLayout['binds'], string> = { opening: 'compartments', height: 'height', neighbour: 'neighbours', wall: 'walls', mass: 'mass', kind: 'kind of rack' };

export const rackWords = {
  drawingTitle: (ware: string, pieces: number, rack: string): string => `${ware}: ${pieces} in one ${rack.charAt(0).toLowerCase()}${rack.slice(1)}`,
  drawingWords: (ware: string, rack: string, width: number, depth: number): string => `${rack} of ${width} by ${depth} mm inside, seen from above, with ${ware} upside down in one layer.`,
  drawingScale: (width: number, depth: number): string => `to scale, ${width} × ${depth} mm inside; upside down, one layer, never nested`,
  drawingFoot: ({ slackMm, cliff, angleDeg, pattern }: RackLayout): string =>
    [
      pattern === 'on edge' ? 'On edge' : `Handles at ${Math.round(angleDeg)}°`,
      slackMm === null ? 'no row near its limit' : `${slackMm.toFixed(1)} mm of rim to spare before a row is lost`,
      ...(cliff === null ? [] : [rackWords.cliff(cliff)]),
    ].join('; '),
  cliff: ({ dimension, changeMm, piecesThen }: NonNullable<RackLayout['cliff']>): string => `${Math.abs(changeMm)} mm ${changeMm < 0 ? 'less' : 'more'} ${dimension === 'handleWidth' ? 'handle width' : dimension}: ${piecesThen}`,
  binds: (what: RackLayout['binds']): string => binds[what],
  tableTitle: 'Pieces in a rack, worked out from their shapes (for the patterns tried; a cleverer one may hold more)',
  ware: 'Ware', rack: 'Rack', pieces: 'Pieces', area: 'Area\nused', loads: 'Loads\nper 100', bound: 'Held\nby', turns: 'Straight\n/ 45°', slack: 'Slack\nmm', near: 'Nearest step', mass: 'Loaded\nkg', lift: 'Lift\nindex',
  marks: '* the rack the scenario uses; + the rack with fewest loads for a day of this house',
  given: (name: string, pieces: number, rack: string, from: 'given' | 'class'): string => `${name}: ${pieces} in one ${rack.toLowerCase()}, ${from === 'given' ? 'as the file gives it' : 'typical of its class (its shape is not known)'}.`,
  liftTold: (reach: number, from: number, to: number): string => `Lift index: NIOSH lifting equation for a lift from ${from} to ${to} cm, hands ${reach} cm ahead of the ankles (state yours with --lift-from, --lift-to, --reach).`,
  washing: (days: number): string => `Washing in the rush, mean of ${days} days`,
  rate: (loads: string, racks: string, fill: string): string => `${loads} loads an hour over the opening hours; ${racks} of our racks a day, ${fill} full on the mean.`,
  handling: (minutes: string, polishing: string): string => `Hands are loading and unloading ${minutes} min a day${polishing === '0' ? '' : `, polishing ${polishing} min`}.`,
  noQueue: 'Racks hardly ever wait for a machine.',
  queue: (from: string, to: string): string => `On the mean day racks wait for a machine from ${from} to ${to}.`,
  needed: (list: string): string => `Racks in use at once, enough on the share of days promised: ${list}.`,
  placesTitle: 'Minutes of one use, by place',
  quartersTitle: 'Busy, quarter hour by quarter hour',
  from: 'from', machines: 'machines', hands: 'hands', waiting: 'racks waiting',
  shapesTitle: (mm: number): string => `The same drinks in cups ${mm} mm wider`,
  shapesHead: ['', 'Cups', 'Cups a rack', 'Racks a day', 'Handling, min a day', 'Cost of all ware'],
  shapesMeasure: 'measure', shapesFigure: 'figure',
  asTheyAre: 'as they are', wider: (mm: number): string => `${mm} mm wider`,
  shapesChart: (more: number, minutes: number): string => `Wider cups: ${more} more to buy, ${minutes} min more handling a day`,
  shapesAxis: { pieces: 'cups to buy', racks: 'racks washed a day', minutes: 'minutes of handling a day' },
};
