import { errorFunction } from 'simple-statistics';

/** Chance that a standard normal number is above z (absolute error some 10⁻⁷). */
export const normalUpper = (z: number): number =>
  Math.max(0, Math.min(1, (1 - errorFunction(z / Math.SQRT2)) / 2));
