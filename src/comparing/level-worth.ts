/** Which level to buy: what the stock costs a year against what the drinks short at it cost. */
export interface LevelPoint {
  readonly level: number;
  /** Cost of the stock bought, minor units. */
  readonly stockCost: number;
  /** Drinks a rush for which the wanted ware is missing. */
  readonly shortADay: number;
}

export interface LevelWorth extends LevelPoint {
  readonly stockAYear: number;
  readonly shortAYear: number;
  readonly totalAYear: number;
  /** Yearly money of the stock by rushes free of shortage. */
  readonly perSafeRush: number;
}

export interface ShortDrink {
  readonly paperCup: number;
  readonly delayMinutes: number;
  /** Chance that the guest does not come back, and what a guest is worth. */
  readonly guestLost: number;
  readonly guestWorth: number;
}

/** What one short drink costs, minor units. */
export const shortDrinkCost = (
  { paperCup, delayMinutes, guestLost, guestWorth }: ShortDrink,
  staffHour: number,
): number => paperCup + (delayMinutes / 60) * staffHour + guestLost * guestWorth;

/**
 * @param yearlyShare what a stock costs a year as a share of its price: even payment over its years, and losses
 */
export function levelsWorth(
  points: readonly LevelPoint[],
  yearlyShare: number,
  shortCost: number,
  daysAYear: number,
): LevelWorth[] {
  return points.map((point) => {
    const stockAYear = point.stockCost * yearlyShare;
    const shortAYear = point.shortADay * shortCost * daysAYear;
    return {
      ...point,
      stockAYear,
      shortAYear,
      totalAYear: stockAYear + shortAYear,
      perSafeRush: stockAYear / (daysAYear * point.level),
    };
  });
}

/** The level of least yearly money. */
export const bestLevel = (levels: readonly LevelWorth[]): LevelWorth =>
  levels.reduce((best, one) => (one.totalAYear < best.totalAYear ? one : best));
