/**
 * A stock whose level is assured: with the confidence asked for, the true share of rushes in which nothing runs out is at
 * least the level.
 *
 * The stock is chosen on one set of days, somewhat above the level, and met with days that played no part in the
 * choice. It passes where the exact lower end of its share there (Clopper & Pearson, Biometrika 26, 1934) is at or above
 * the level. A stock that fails is given up: another is chosen, its test on unused days again. Every try may pass
 * a stock that is truly below the level, so the error is spent over the tries, one half of it on the first, a quarter on
 * the second and so on; however many there are, the chance that any stock below the level passes is at most the whole.
 */
import { exactBinomialInterval } from '../statistics/exact-binomial-interval.js';
import { choose, largestError, missedOn, missesFor } from './choose-stock.js';
import { sized, type SizedStock } from './size-stock.js';
import { KindStores, type SizingRequest } from './sizing-request.js';

/** What was assured, and by how many tries; not `held` where every try failed. */
export interface Assured {
  readonly confidence: number;
  readonly tries: number;
  readonly held: boolean;
}

export interface AssuredStock extends SizedStock {
  readonly assured: Assured;
}

const [CHOSEN_ON, TESTED_ON] = [8000, 8000];
/** Misses that the days of a test can tell of at the level: fewer, and only a stock far above it could pass. */
const MISSES_WORTH_TESTING = 40;
const MOST_TRIES = 4;
/** Days that a stock is chosen on at most, once the days of tests that failed are added. */
const MOST_CHOSEN_ON = 32_000;
/** Standard errors by which the stock is chosen above what just passes, so that nine tries of ten pass. */
const SPARE = 1.3;

/**
 * @param confidence one-sided, between 0.5 and 1
 * @throws RangeError for another confidence
 */
export async function assuredStock(
  request: SizingRequest,
  confidence: number,
): Promise<AssuredStock> {
  if (!(confidence > 0.5 && confidence < 1))
    throw new RangeError(`an assurance needs 0.5 < confidence < 1; given ${confidence}`);
  const { level, further = [] } = request;
  const stores = new KindStores(request);
  const tested = Math.max(request.days ?? TESTED_ON, Math.ceil(MISSES_WORTH_TESTING / (1 - level)));
  let days = request.days ?? CHOSEN_ON;
  let used = days;
  // Each kind of day is tested, and has its part of the error.
  const kinds = 1 + further.length;
  let error = (1 - confidence) / 2 / kinds;
  for (let tries = 1; ; tries += 1, error /= 2) {
    const peaks = await stores.days(0, days, tries === 1 ? tested : 0);
    const aim = aimedAt(level, error, days, tested);
    const chosen = await choose(request, peaks, missesFor(request, peaks, aim));
    const fresh = await stores.days(used, tested);
    const missed = await missedOn(request, fresh, chosen.stock, used);
    const ends = missed.map((count) => endsAt(count, tested, error));
    const held = ends.every(({ low }) => low >= level);
    if (held || tries === MOST_TRIES)
      return {
        ...sized(request, peaks, chosen, {
          fresh,
          // Either end alone holds with the confidence asked for, so both do with twice its error.
          kept: ends.map(({ low, high, share }) => ({
            share,
            low,
            high,
            confidence: 1 - 2 * (1 - confidence),
          })),
          error: largestError(request, peaks),
          assured: confidence,
        }),
        assured: { confidence, tries, held },
      };
    used += tested;
    // A test that failed has said all it can; its days may help to choose.
    days = Math.min(used, Math.max(MOST_CHOSEN_ON, days));
  }
}

const endsAt = (missed: number, days: number, error: number) =>
  exactBinomialInterval(days - missed, days, 1 - 2 * error);

/** The level to choose for: as many misses in a test as just pass, less what chance may add where the stock is chosen and tested. */
function aimedAt(level: number, error: number, chosenOn: number, tested: number): number {
  let most = Math.floor(tested * (1 - level));
  while (most > 0 && endsAt(most, tested, error).low < level) most -= 1;
  const share = most / tested;
  const spread = Math.sqrt(share * (1 - share) * (1 / tested + 1 / chosenOn));
  return 1 - Math.max(share - SPARE * spread, 0.5 / chosenOn);
}
