/** The places a piece can be, in the order of its way round. */
export const PLACES = [
  'shelf',
  'in use',
  'on the table, dirty',
  'carried',
  'on the bench',
  'racked',
  'in the machine',
  'drying',
  'being polished',
] as const;

export const SHELF = 0;
export const IN_USE = 1;
export const DIRTY_TABLE = 2;
export const CARRIED = 3;
export const BENCH = 4;
export const RACKED = 5;
export const WASHING = 6;
export const DRYING = 7;
export const POLISHING = 8;

export const PLACE_COUNT = PLACES.length;
