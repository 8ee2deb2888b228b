/**
 * The least filled share at which a part rack may go by waiting or by time.
 *
 * A filled share is a quotient of whole numbers, so it is compared exactly but for the last digits in which a share
 * like "66.66666666666667 %" misses the two thirds it stands for.
 */
import type { BenchView } from './load-rule.js';

const HAIR = 1e-12;

export class LeastFill {
  private readonly least: number;

  /** @param share 0..1; null: any rack will do */
  constructor(share: number | null) {
    this.least = (share ?? 0) - HAIR;
  }

  met(rack: number, bench: BenchView): boolean {
    return bench.fill(rack) >= this.least;
  }
}
