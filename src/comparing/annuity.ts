/** Money over years: what a payment later is worth now, and what a purchase costs a year of its life. */
import { expm1 } from '../elementary/exp.js';
import { log1p } from '../elementary/log.js';
import { power } from '../elementary/powers.js';

/** What 1 at the end of each of so many years is worth now; the years themselves where the rate is 0. */
export function annuityFactor(rate: number, years: number): number {
  check(rate, years);
  return rate === 0 ? years : -expm1(-years * log1p(rate)) / rate;
}

/** The even payment at the end of each year of `years` that is worth `amount` now. */
export const yearlyPayment = (amount: number, rate: number, years: number): number =>
  amount / annuityFactor(rate, years);

/** Present value of cash flows at the ends of years 0, 1, 2 …; the first is now. */
export function netPresentValue(rate: number, flows: readonly number[]): number {
  check(rate, 1);
  return flows.reduce((sum, flow, year) => sum + flow / power(1 + rate, year), 0);
}

/**
 * Present value over a horizon of a thing that is bought now and again whenever its life ends, each year charged
 * its even payment: lives that do not divide the horizon are compared fairly.
 */
export const presentCost = (price: number, life: number, rate: number, horizon: number): number =>
  yearlyPayment(price, rate, life) * annuityFactor(rate, horizon);

function check(rate: number, years: number): void {
  if (!(rate > -1 && years > 0 && Number.isFinite(rate) && Number.isFinite(years)))
    throw new RangeError(
      `an annuity needs a rate above -1 and years above 0; given ${rate} and ${years}`,
    );
}
