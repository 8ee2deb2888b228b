/** A remedy in one clause: what to change, and what that does to the coffee. */
import { minorDigits, minorPerUnit } from '../quantities/money.js';
import { SINGLE, type Remedy } from './remedies.js';
import { millilitres, percent } from './words.js';

export function remedyWords(remedy: Remedy, currency: string): string {
  const close = remedy.target === 'within' ? ', just close enough to taste alike' : '';
  return `${changeWords(remedy)}${close}; ${coffeeWords(remedy, currency)}`;
}

/** The change alone. */
export function changeWords({ kind, side, from, to, set, onHand }: Remedy): string {
  const where = side === 'house' ? 'in the house' : 'to take away';
  const cup = side === 'house' ? 'house cup' : 'takeaway cup';
  const such = onHand.length > 0 ? `, such as ${onHand.map(({ id }) => id).join(' or ')},` : '';
  switch (kind) {
    case 'vessel':
    case 'paper':
      return `use a ${kind === 'paper' ? 'paper' : 'house'} cup of ${millilitres(to)} to the brim${such} instead of ${millilitres(from)}`;
    case 'fill':
      return `fill the ${cup} to ${percent(to)} of the brim instead of ${percent(from)}`;
    case 'share':
      return `use ${shotWords(to)} ${where} instead of ${shotWords(from)}`;
    case 'ratio':
      return `pull the shot ${where} at 1 : ${to.toFixed(1)} instead of 1 : ${from.toFixed(1)}, with the shot as strong as now (same TDS; extraction ${percent(set.extraction ?? 0)})`;
    case 'dose':
      return `use a basket for ${to.toFixed(1)} g of coffee ${where} instead of ${from.toFixed(1)} g`;
  }
}

const shotWords = (share: number): string =>
  share === 1
    ? 'the whole shot'
    : share === SINGLE
      ? 'half the shot'
      : `${percent(share)} of the shot`;

function coffeeWords(remedy: Remedy, currency: string): string {
  const { kind, from, to, coffeeGADrink, coffeeKgAWeek, coffeeCostAWeekMinor } = remedy;
  const lessOfAShot = kind === 'share' && to < from;
  if (Math.abs(coffeeGADrink) < 0.05)
    return lessOfAShot
      ? 'the rest of the shot is thrown away, so this saves no coffee'
      : 'this takes the same amount of coffee';
  const much =
    coffeeCostAWeekMinor !== null
      ? `${money(Math.abs(coffeeCostAWeekMinor), currency)} of coffee a week`
      : coffeeKgAWeek !== null
        ? `${Math.abs(coffeeKgAWeek).toFixed(2)} kg of coffee a week`
        : `${Math.abs(coffeeGADrink).toFixed(1)} g of coffee a drink`;
  if (coffeeGADrink > 0) return `this costs ${much}`;
  return lessOfAShot
    ? `this saves ${much} only if the rest of each shot goes into another drink`
    : `this saves ${much}`;
}

function money(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  return new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(minor / minorPerUnit(currency));
}
