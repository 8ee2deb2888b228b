import { mergePeaks, sliceDays } from './peaks.js';
import type { Peaks } from './peaks.js';

/** Where days come from. A day is known by its number from 0; the same number is always the same day. */
export interface DayProvider {
  /**
   * Peaks with unlimited ware of `count` days from number `from` on.
   * @param after days right after these that are sure to be asked for next
   */
  peaks(from: number, count: number, after: number): Peaks | Promise<Peaks>;
}

/** Keeps every day that was asked for, so that none is run twice however often sizing starts again. */
export class DayStore {
  readonly #provider: DayProvider;
  #known: Peaks | null = null;

  constructor(provider: DayProvider) {
    this.#provider = provider;
  }

  /**
   * The days from number `from` on, `count` of them; runs those not known yet, and all before them.
   *
   * @param after days right after these that are sure to be asked for next
   * @throws RangeError if the provider hands back another number of days
   */
  async days(from: number, count: number, after = 0): Promise<Peaks> {
    const known = this.#known?.days ?? 0;
    const wanted = from + count - known;
    if (this.#known === null || wanted > 0) {
      const fresh = await this.#provider.peaks(known, wanted, after);
      if (fresh.days !== wanted)
        throw new RangeError(
          `${wanted} days were asked for from day ${known}, ${fresh.days} were given`,
        );
      this.#known = this.#known === null ? fresh : mergePeaks([this.#known, fresh]);
    }
    return sliceDays(this.#known, from, count);
  }
}
