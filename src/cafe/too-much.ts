/** What a scenario may ask too much of while it is run: its writer's mistake, which no reading can foresee. */

/** Most events of one day. Long-run checks of weeks stay well below; a day beyond takes seconds, and a study of it hours. */
export const MOST_EVENTS = 1_000_000;
/** Most pieces of one ware off the shelf, as they are kept in 16 bits. */
export const MOST_PIECES = 65_535;

/** Of the error, by its name, as a thread hands on no class of ours. */
const NAME = 'TooMuch';

export const isTooMuch = (error: unknown): error is Error =>
  error instanceof Error && error.name === NAME;

const tooMuch = (message: string): RangeError =>
  Object.assign(new RangeError(message), { name: NAME });

export const tooManyPieces = (ware: string, pieces: number, day: number): RangeError =>
  tooMuch(
    `ware "${ware}": ${pieces} pieces are off the shelf at once on day ${day}, and at most ${MOST_PIECES} can be counted; check the guests per hour, the dwell and the washing for a typing mistake`,
  );

export const tooManyEvents = (day: number): RangeError =>
  tooMuch(
    `more than ${MOST_EVENTS.toLocaleString('en')} things happen on day ${day} (guests, drinks, rounds, loads), the most that can be simulated; check the guests per hour, the rounds, the other loads and the hours for a typing mistake`,
  );
