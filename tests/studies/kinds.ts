/** Kinds of day on simulated tills: how often one is named where all days are one, and found where weekends are known to differ. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { fitKinds } from '../../src/till/fit-kinds.js';
import { must } from '../till/sales.js';
import { tillOfKinds, weekendMap, type Weekends } from '../till/till-of-kinds.js';

const FILE = 'reports/study-kinds.json';
const RUNS: readonly {
  readonly name: string;
  readonly weeks: number;
  readonly weekends: Weekends;
  readonly tills: number;
}[] = [
  { name: 'all days are one, 8 weeks', weeks: 8, weekends: {}, tills: 2000 },
  { name: 'all days are one, 26 weeks', weeks: 26, weekends: {}, tills: 1000 },
  { name: '1.15 times the parties, 12 weeks', weeks: 12, weekends: { times: 1.15 }, tills: 400 },
  { name: '1.3 times the parties, 12 weeks', weeks: 12, weekends: { times: 1.3 }, tills: 400 },
  { name: '1.6 times the parties, 12 weeks', weeks: 12, weekends: { times: 1.6 }, tills: 400 },
  { name: 'late instead of early, 12 weeks', weeks: 12, weekends: { late: true }, tills: 400 },
  { name: 'half of the drinks another, 12 weeks', weeks: 12, weekends: { tea: 0.5 }, tills: 400 },
];

const shareOf = (count: number, of: number) => {
  const { share, low, high } = exactBinomialInterval(count, of);
  return { share, interval: [low, high], of };
};

export function main(): Promise<void> {
  const figures: Record<string, unknown> = existsSync(FILE)
    ? (JSON.parse(readFileSync(FILE, 'utf8')) as Record<string, unknown>)
    : {};
  for (const { name, weeks, weekends, tills } of RUNS) {
    if (name in figures) continue;
    const found = Array.from({ length: tills }, (_, at) =>
      must(fitKinds(tillOfKinds(`${name} ${at}`, weeks, weekends), weekendMap, name)),
    );
    const compared = found.map((one) => one.compared[0]!);
    const true_ = weekends.times ?? 1;
    figures[name] = {
      named: shareOf(found.filter(({ fitted }) => fitted.length > 0).length, tills),
      by: Object.fromEntries(
        (['volume', 'shape', 'mix', 'spread'] as const).map((aspect) => [
          aspect,
          compared.filter(({ differs }) => differs.includes(aspect)).length / tills,
        ]),
      ),
      intervalHoldsFactor: shareOf(
        compared.filter(({ times: { low, high } }) => low <= true_ && true_ <= high).length,
        tills,
      ),
    };
    writeFileSync(FILE, `${JSON.stringify(figures, null, 1)}\n`);
    process.stdout.write(`${name}: ${JSON.stringify(figures[name])}\n`);
  }
  return Promise.resolve();
}
