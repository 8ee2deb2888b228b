/** The till of the café on the market square: an invented export whose kinds of day are known, drawn from a fixed seed. */
import { standardGamma } from '../../src/engine/durations.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { clock, isoDate, weekdayOf } from '../../src/till/clock.js';
import { poisson } from './sales.js';

/** Parties by hour from 08:00 to 14:00, and shares of coffee, tea and chocolate. */
interface DayOfTill {
  readonly hours: readonly number[];
  readonly drinks: readonly [number, number, number];
}

export const USUAL: DayOfTill = { hours: [7, 11, 12, 9, 8, 5], drinks: [0.72, 0.2, 0.08] };
/** As a multiple of usual days 1.75, and early. */
export const MARKET_DAY: DayOfTill = { hours: [20, 26, 20, 12, 8, 5], drinks: [0.72, 0.2, 0.08] };
/** As a multiple of usual days 1.4, late, and with other drinks. */
export const SATURDAY: DayOfTill = { hours: [4, 8, 13, 18, 18, 12], drinks: [0.5, 0.18, 0.32] };
const [MONDAY, THURSDAY, SATURDAYS] = [0, 3, 5];
const SIZES = [0.55, 0.33, 0.08, 0.04];
/** How much whole days differ. */
const CV = 0.1;
/** Tuesday, 3 March 2026. */
const FIRST_DAY = 20_515;
const WEEKS = 18;

const kindOf = (weekday: number): DayOfTill =>
  weekday === THURSDAY ? MARKET_DAY : weekday === SATURDAYS ? SATURDAY : USUAL;

function drawn(shares: readonly number[], stream: Stream): number {
  let left = stream.uniform();
  const at = shares.findIndex((share) => (left -= share) < 0);
  return at < 0 ? shares.length - 1 : at;
}

/** The export as text. */
export function marketTill(): string {
  const stream = new Stream(streamKey('market square', 'till'));
  const rows = ['date,from,tickets,withDrinks,coffees,teas,chocolates'];
  for (let day = FIRST_DAY; day < FIRST_DAY + 7 * WEEKS; day += 1) {
    if (weekdayOf(day) === MONDAY) continue;
    const { hours, drinks } = kindOf(weekdayOf(day));
    const level = standardGamma(1 / CV ** 2, stream) * CV ** 2;
    for (let slot = 0; slot < 4 * hours.length; slot += 1) {
      const parties = poisson(stream, (level * hours[Math.floor(slot / 4)]!) / 4);
      const others = poisson(stream, 0.4);
      const sold = [0, 0, 0];
      for (let party = 0; party < parties; party += 1)
        for (let more = drawn(SIZES, stream); more >= 0; more -= 1)
          sold[drawn(drinks, stream)]! += 1;
      if (parties + others > 0)
        rows.push(
          [isoDate(day), clock(480 + 15 * slot), parties + others, parties, ...sold].join(','),
        );
    }
  }
  return `${rows.join('\n')}\n`;
}
