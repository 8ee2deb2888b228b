/** The standard normal quantile, from a general library, so that one uniform gives one normal draw. */
import standardNormal from '@stdlib/stats-base-dists-normal-quantile';

/** The value below which a standard normal lies with probability `share` (0 < share < 1). */
export const normalQuantile: (share: number) => number = standardNormal.factory(0, 1);
