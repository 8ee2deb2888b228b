import { betaQuantile } from './beta-quantile.js';

const ALPHA = 0.05;

/**
 * The exact 95 % interval of a share seen on days that are worth so many independent ones, which need not be a whole
 * number (E. Korn and B. Graubard, Survey Methodology 24, 1998).
 */
export function shareInterval(share: number, days: number): { low: number; high: number } {
  const safe = share * days;
  return {
    low: safe <= 1e-9 ? 0 : betaQuantile(ALPHA / 2, safe, days - safe + 1),
    high: days - safe <= 1e-9 ? 1 : betaQuantile(1 - ALPHA / 2, safe + 1, days - safe),
  };
}
