/**
 * The backtest on simulated tills: without drift it should seldom find one, with a drift that is known it should. A
 * small house, 24 recorded days, levels of days that differ by a fifth; the same function as the command's.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inThisThread } from '../../src/cafe/runner.js';
import { backtestStudy } from '../../src/questions/backtest/study.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { simulatedTill, smallBase, smallMap } from '../questions/backtest/simulated-till.js';

const TILLS = 400;
const FILE = 'reports/study-backtest.json';
/** Parties at the last day over those at the first. */
const DRIFTS = [1, 1.5, 2];

interface Line {
  readonly drift: boolean;
  readonly any: boolean;
  readonly verdict: string;
  readonly share: number;
  readonly inside: boolean;
}

export async function main(folder: string): Promise<void> {
  const figures: Record<string, unknown> = existsSync(FILE)
    ? (JSON.parse(readFileSync(FILE, 'utf8')) as Record<string, unknown>)
    : {};
  for (const drift of DRIFTS) {
    const name = `drift to ${drift} times`;
    if (name in figures) continue;
    const log = join(folder, `backtest-${drift}.jsonl`);
    const lines: Line[] = existsSync(log)
      ? readFileSync(log, 'utf8')
          .trim()
          .split('\n')
          .map((line) => JSON.parse(line) as Line)
      : [];
    for (let till = lines.length; till < TILLS; till += 1) {
      const found = await backtestStudy({
        text: smallBase,
        map: smallMap,
        tally: simulatedTill(`till ${till}`, 24, drift),
        file: 'simulated',
        runner: inThisThread(),
        level: 0.9,
        seed: String(till),
        days: 200,
        draws: 10,
      });
      if (!found.ok) throw new Error(found.flaws.map(({ rule }) => rule).join('\n'));
      const { causes, verdict, safe } = found.value;
      const line = {
        drift: causes.some((one) => one.cause === 'drift' && one.found),
        any: causes.some((one) => one.found),
        verdict,
        share: safe.share,
        inside: safe.low <= 0.9 && 0.9 <= safe.high,
      };
      lines.push(line);
      appendFileSync(log, `${JSON.stringify(line)}\n`);
    }
    const share = (of: (line: Line) => boolean) => {
      const { share: found, low, high } = exactBinomialInterval(lines.filter(of).length, TILLS);
      return { share: found, interval: [low, high] };
    };
    figures[name] = {
      tills: TILLS,
      recordedDays: 24,
      driftFound: share((line) => line.drift),
      anyCauseFound: share((line) => line.any),
      tooOptimistic: share((line) => line.verdict === 'tooOptimistic'),
      intervalHoldsPromise: share((line) => line.inside),
      meanSafe: lines.reduce((sum, line) => sum + line.share, 0) / TILLS,
    };
    writeFileSync(FILE, `${JSON.stringify(figures, null, 1)}\n`);
    process.stdout.write(`${name}: ${JSON.stringify(figures[name])}\n`);
  }
}
