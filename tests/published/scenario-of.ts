/** Scenario files in plain form for checks: idealised stages unless said otherwise. */
import { readScenario, type ReadResult } from '../../src/scenario/read-scenario.js';
import { compile } from '../../src/scenario/compile.js';
import type { CafeModel } from '../../src/cafe/model.js';

type Tree = Record<string, unknown>;

/** One ware, one drink, everything unlimited and instant: what is not given in `changes`. */
export function idealised(changes: Tree): Tree {
  return {
    name: 'Check',
    currency: 'EUR',
    staffHour: '20 EUR',
    guests: { partySize: 1, staysIn: '100 %', drinksEach: 1, secondDrink: 0, dwell: '0 s' },
    menu: { coffee: { share: 1, setting: ['cup'], making: '0 s' } },
    ware: { cup: { price: '1 EUR', family: 'china', perRack: 1, drying: '0 s' } },
    seats: { count: 'unlimited' },
    counter: { makers: 'unlimited', making: '0 s' },
    clearing: 'atOnce',
    washing: { machines: { unlimited: instantMachine }, hands: 'unlimited', partLoadWait: 'never' },
    ...changes,
  };
}

export const instantMachine = { racks: 1, loading: '0 s', cycle: '0 s', unloading: '0 s' };

/** Steady arrivals of single guests: `rate` parties a minute for `minutes`. */
export function steady(rate: number, minutes: number): Tree {
  return {
    hours: { for: `${minutes} min` },
    arrivals: { steps: [{ for: `${minutes} min`, parties: `${rate} / min` }], dayFactor: 0 },
  };
}

/** The model of a scenario given as a tree, through the same door as any file. */
export function modelOf(tree: Tree): CafeModel {
  const result: ReadResult = readScenario(JSON.stringify(tree), 'check.json');
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join('\n'));
  return compile(result.scenario);
}
