/** Prices at which an alternative and the base cost the same over the horizon, the stocks as chosen. Whole units of currency. */
import { annuityFactor, presentCost } from '../../comparing/annuity.js';
import { breakEven, type BreakEven } from '../../comparing/break-even.js';
import { frameOf, machinesOf } from './costs.js';
import type { Evaluated } from './evaluate.js';
import { costOf } from './differences.js';

export function breakEvens(base: Evaluated, other: Evaluated, perUnit: number): BreakEven[] {
  const frame = frameOf(base.candidate.scenario);
  const years = annuityFactor(frame.discount, frame.horizonYears);
  const difference = other.costs.total - base.costs.total;
  const yearly = (part: 'water' | 'energy' | 'service' | 'breakage' | 'lost'): number =>
    (other.costs.year[part] - base.costs.year[part]) * years;
  const present = ({ candidate }: Evaluated): number =>
    machinesOf(candidate.scenario).reduce(
      (sum, { price, lifeYears }) =>
        sum + presentCost(price, lifeYears, frame.discount, frame.horizonYears),
      0,
    );
  const pieces = base.stock.reduce((sum, count) => sum + count, 0);
  const lines = [
    {
      what: 'machines',
      price: other.costs.now.machines - base.costs.now.machines,
      part: present(other) - present(base) + yearly('service'),
    },
    {
      what: 'piece',
      price: pieces === 0 ? 0 : costOf(base) / pieces,
      part: other.costs.now.ware - base.costs.now.ware + yearly('breakage') + yearly('lost'),
    },
    { what: 'water', price: frame.waterPerM3, part: yearly('water') },
    { what: 'energy', price: frame.energyPerKWh * 100, part: yearly('energy') },
  ];
  return lines
    .filter(({ price, part }) => price > 0 && Math.abs(part) > 0.5)
    .map(({ what, price, part }) => breakEven(what, price, difference, part))
    .map((line) => ({
      what: line.what,
      price: line.price / perUnit,
      flipsAt: line.flipsAt === null ? null : line.flipsAt / perUnit,
    }));
}
