/**
 * What can happen on the floor, in the order in which it happens when it happens at one instant.
 *
 * The numbers are the calendar's ranks (priorities): pieces come back before anyone asks for them, guests leave
 * before others give up waiting for their seats, and second orders come last, so that none is placed in
 * the very millisecond in which its party leaves.
 */
export const EVENT = {
  piecesReturn: 0,
  polished: 1,
  fetched: 2,
  unloaded: 3,
  cycleDone: 4,
  loaded: 5,
  machineChanges: 6,
  tripEnds: 8,
  leave: 10,
  drinkDone: 12,
  round: 14,
  /** Loads are considered, because a rule asked for it when a rack was opened. */
  partLoadWait: 16,
  /** A rule of the part racks is called at a time of its own. */
  ruleCalled: 17,
  seatWait: 18,
  otherLoad: 20,
  arrival: 22,
  secondOrder: 24,
} as const;
