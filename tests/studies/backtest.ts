/**
 * The backtest on simulated tills: without drift it should seldom find one, with a drift that is known it should. A
 * small house, a promise of 90 %, 24 recorded days, levels of days that differ by a fifth; the same function as the command's. Without drift
 * the interval of the share of safe days is held against that of 20,000 days of the house.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inThisThread } from '../../src/cafe/runner.js';
import type { Backtest } from '../../src/questions/backtest/answer.js';
import { causesOf } from '../../src/questions/backtest/judged.js';
import { backtestStudy } from '../../src/questions/backtest/study.js';
import { heldOn } from '../../src/questions/size/allow-for-inputs.js';
import { compile } from '../../src/scenario/compile.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import {
  levelled,
  simulatedTill,
  smallBase,
  smallMap,
} from '../questions/backtest/simulated-till.js';

const FILE = 'reports/study-backtest.json';
const DAYS = 24;
/** Parties at the last day over those at the first; tills whose causes are tested, and those sized and run too. */
const RUNS = [
  { drift: 1, tested: 2000, run: 400 },
  { drift: 1.5, tested: 2000, run: 150 },
  { drift: 2, tested: 2000, run: 0 },
] as const;

interface Line {
  readonly verdict: string;
  readonly share: number;
  readonly inside: boolean;
  /** Share of all days of the house on which the stocks tried are safe, and whether the interval holds it; null with a drift. */
  readonly truth: number | null;
  readonly holdsTruth: boolean | null;
}

const TRUE_DAYS = 20_000;
let known: Promise<Peaks> | undefined;

/** Days of the house that the tills are drawn from, run once. */
const trueDays = (): Promise<Peaks> => (known ??= runTrueDays());

async function runTrueDays(): Promise<Peaks> {
  const read = readScenario(smallBase, 'small', { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error('not read');
  const model = compile(read.scenario, piecesPerRackOf);
  const task = { model, seed: 'true days', from: 0, days: TRUE_DAYS, stock: null, listed: null };
  const { peaks } = await inThisThread().run({ ...task, byDay: false });
  return { days: TRUE_DAYS, ware: model.ware.length, data: peaks };
}

/** Of the days tried: each origin's stock is held to as many of them as were tried with it. */
function trueShare(origins: Backtest['origins'], peaks: Peaks): number {
  const tried = origins.reduce((sum, one) => sum + one.tried.length, 0);
  return origins.reduce((sum, { stock, tried: its }) => {
    const { level } = heldOn(
      [peaks],
      stock.map(({ pieces }) => pieces),
      1,
    );
    return sum + (level * its.length) / tried;
  }, 0);
}

const shareOf = (count: number, of: number) => {
  const { share, low, high } = exactBinomialInterval(count, of);
  return { share, interval: [low, high], of };
};

function causes(drift: number, tills: number): unknown {
  const found = Array.from({ length: tills }, (_, till) => {
    const days = [...simulatedTill(`till ${till}`, DAYS, drift).days.values()];
    return causesOf(levelled(days), DAYS / 2).causes.filter((one) => one.found);
  });
  const with_ = (name: string) =>
    shareOf(found.filter((all) => all.some(({ cause }) => cause === name)).length, tills);
  return {
    drift: with_('drift'),
    spread: with_('spread'),
    shape: with_('shape'),
    any: shareOf(found.filter((all) => all.length > 0).length, tills),
  };
}

export async function main(folder: string): Promise<void> {
  const figures: Record<string, unknown> = existsSync(FILE)
    ? (JSON.parse(readFileSync(FILE, 'utf8')) as Record<string, unknown>)
    : {};
  const keep = (name: string, found: unknown): void => {
    figures[name] = found;
    writeFileSync(FILE, `${JSON.stringify(figures, null, 1)}\n`);
    process.stdout.write(`${name}: ${JSON.stringify(found)}\n`);
  };
  for (const { drift, tested } of RUNS) {
    const name = `drift to ${drift} times: causes found`;
    if (!(name in figures)) keep(name, causes(drift, tested));
  }
  for (const { drift, run: tills } of RUNS) {
    const name = `drift to ${drift} times: verdict`;
    if (name in figures || tills === 0) continue;
    const log = join(folder, `backtest-${drift}.jsonl`);
    const lines: Line[] = existsSync(log)
      ? readFileSync(log, 'utf8')
          .trim()
          .split('\n')
          .slice(0, tills)
          .map((line) => JSON.parse(line) as Line)
      : [];
    for (let till = lines.length; till < tills; till += 1) {
      const found = await backtestStudy({
        text: smallBase,
        map: smallMap,
        tally: simulatedTill(`till ${till}`, DAYS, drift),
        file: 'simulated',
        runner: inThisThread(),
        level: 0.9,
        seed: String(till),
        days: 200,
        draws: 10,
      });
      if (!found.ok) throw new Error(found.flaws.map(({ rule }) => rule).join('\n'));
      const { verdict, safe, origins } = found.value;
      const inside = safe.low <= 0.9 && 0.9 <= safe.high;
      const truth = drift === 1 ? trueShare(origins, await trueDays()) : null;
      const holdsTruth = truth === null ? null : safe.low <= truth && truth <= safe.high;
      const line = { verdict, share: safe.share, inside, truth, holdsTruth };
      lines.push(line);
      appendFileSync(log, `${JSON.stringify(line)}\n`);
    }
    keep(name, {
      recordedDays: DAYS,
      tooOptimistic: shareOf(lines.filter((one) => one.verdict === 'tooOptimistic').length, tills),
      intervalHoldsPromise: shareOf(lines.filter((one) => one.inside).length, tills),
      ...(drift === 1
        ? {
            intervalHoldsTrueShare: shareOf(lines.filter((one) => one.holdsTruth).length, tills),
            meanTrueShare: lines.reduce((sum, one) => sum + one.truth!, 0) / tills,
          }
        : {}),
      meanSafe: lines.reduce((sum, one) => sum + one.share, 0) / tills,
    });
  }
}
