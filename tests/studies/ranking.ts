/**
 * Whether the comparison keeps its word: houses equal in law are told apart in at most 5 % of runs, houses a known
 * distance apart are ranked the right way round, intervals cover as often as they say. Through the same function as
 * `cuptide compare`, habits tuned; every replication has a seed of its own, and an interrupted run goes on.
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { annuityFactor } from '../../src/comparing/annuity.js';
import { takeLooks } from '../../src/questions/compare/looks.js';
import { inThisThread } from '../../src/cafe/runner.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { equalHouses, shapes } from './equal-houses.js';

interface Study {
  readonly name: string;
  readonly shape: keyof typeof shapes;
  /** Known difference of each alternative to the base, whole currency units a year. */
  readonly aYear: readonly number[];
  readonly looks: readonly number[];
  readonly habitDays: number;
  readonly replications: number;
}

const SMALL = [100, 200, 400];
const DEFAULT = [1000, 2000, 4000];
const equal = (alternatives: number): number[] => Array.from({ length: alternatives }, () => 0);

const studies: readonly Study[] = [
  {
    name: 'equal, 2 alternatives',
    shape: 'small',
    aYear: equal(2),
    looks: SMALL,
    habitDays: 50,
    replications: 400,
  },
  {
    name: 'equal, 3 alternatives',
    shape: 'small',
    aYear: equal(3),
    looks: SMALL,
    habitDays: 50,
    replications: 400,
  },
  {
    name: 'equal, 6 alternatives',
    shape: 'small',
    aYear: equal(6),
    looks: SMALL,
    habitDays: 50,
    replications: 400,
  },
  {
    name: 'known distances',
    shape: 'small',
    aYear: [4, 8, 16],
    looks: SMALL,
    habitDays: 50,
    replications: 400,
  },
  {
    // About one, two and four standard errors of the first look: where power is neither none nor all.
    name: 'known distances, near',
    shape: 'small',
    aYear: [0.75, 1.5, 3],
    looks: SMALL,
    habitDays: 50,
    replications: 400,
  },
  {
    name: 'equal, large house',
    shape: 'large',
    aYear: equal(2),
    looks: SMALL,
    habitDays: 50,
    replications: 100,
  },
  {
    name: 'equal, default days',
    shape: 'small',
    aYear: equal(2),
    looks: DEFAULT,
    habitDays: 200,
    replications: 400,
  },
];

const YEARS = annuityFactor(0.05, 8);

interface Told {
  readonly difference: number;
  readonly error: number;
  /** Whether the interval holds the known difference: of this one alone, and corrected. */
  readonly alone: boolean;
  readonly together: boolean;
}

interface Replication {
  readonly study: string;
  readonly number: number;
  readonly verdicts: readonly (string | null)[];
  readonly byLook: readonly (readonly Told[])[];
  /** At the best habits; the known difference is that at the same habits, so only houses that chose alike are judged. */
  readonly tunedVerdicts: readonly string[];
  readonly ms: number;
}

async function replicate(study: Study, number: number): Promise<Replication> {
  const started = performance.now();
  const { houses } = await takeLooks(
    equalHouses(shapes[study.shape], study.aYear),
    inThisThread(),
    {
      level: 0.95,
      seed: seedOf(study, number),
      looks: study.looks,
      habitDays: study.habitDays,
    },
  );
  const others = houses.slice(1);
  return {
    study: study.name,
    number,
    verdicts: others.map(({ verdict }) => verdict),
    byLook: others.map(({ byLook }, at) =>
      byLook.map(({ total, error }) => {
        const truth = study.aYear[at]! * 100 * YEARS;
        const holds = ({ low, high }: { low: number; high: number }): boolean =>
          low <= truth && truth <= high;
        return {
          difference: total.difference - truth,
          error,
          alone: holds(total.alone),
          together: holds(total),
        };
      }),
    ),
    tunedVerdicts: others.map(({ tuned }) => tuned?.verdict ?? 'none'),
    ms: performance.now() - started,
  };
}

const seedOf = ({ name }: Study, number: number): string => `ranking/${name}/${number}`;

export async function main(folder: string, [only]: readonly string[]): Promise<void> {
  const log = join(folder, 'ranking.jsonl');
  const done: Replication[] = existsSync(log)
    ? readFileSync(log, 'utf8')
        .split('\n')
        .filter(Boolean)
        .map((line) => JSON.parse(line) as Replication)
    : [];
  const known = new Set(done.map(({ study, number }) => `${study}/${number}`));
  for (const study of studies) {
    if (only !== undefined && !study.name.includes(only)) continue;
    for (let number = 0; number < study.replications; number += 1) {
      if (known.has(`${study.name}/${number}`)) continue;
      const one = await replicate(study, number);
      appendFileSync(log, `${JSON.stringify(one)}\n`);
      done.push(one);
    }
    report(done);
  }
  report(done);
}

function report(done: readonly Replication[]): void {
  const rows = studies.flatMap((study) => {
    const own = done.filter((one) => one.study === study.name);
    return own.length === 0 ? [] : [summary(study, own)];
  });
  writeFileSync('reports/study-ranking.json', `${JSON.stringify(rows, null, 1)}\n`);
  for (const row of rows) console.log(JSON.stringify(row));
}

const share = (
  count: number,
  of: number,
): { share: number; low: number; high: number; of: number } => {
  const { share: found, low, high } = exactBinomialInterval(count, of);
  return { share: round(found), low: round(low), high: round(high), of };
};
const round = (value: number): number => Number(value.toPrecision(4));
const count = <T>(all: readonly T[], that: (one: T) => boolean): number => all.filter(that).length;

function summary(study: Study, own: readonly Replication[]) {
  const isEqual = study.aYear.every((more) => more === 0);
  const singles = study.looks.map((days, look) => {
    const all = own.flatMap(({ byLook }) => byLook.flatMap((told) => told[look] ?? []));
    // Those that were told apart earlier have no later look: a fixed number of days is the first.
    const mean = all.reduce((sum, { difference }) => sum + difference, 0) / all.length;
    const spread = Math.sqrt(
      all.reduce((sum, { difference }) => sum + (difference - mean) ** 2, 0) / (all.length - 1),
    );
    const stated = Math.sqrt(all.reduce((sum, { error }) => sum + error ** 2, 0) / all.length);
    return {
      days,
      covers: share(
        count(all, ({ alone }) => alone),
        all.length,
      ),
      meanError: round(mean / 100),
      trueSpread: round(spread / 100),
      statedError: round(stated / 100),
    };
  });
  return {
    study: study.name,
    shape: study.shape,
    knownDifferencesAYear: study.aYear,
    looks: study.looks,
    seeds: `${seedOf(study, 0)} to ${seedOf(study, own.length - 1)}`,
    replications: own.length,
    secondsEach: round(own.reduce((sum, { ms }) => sum + ms, 0) / own.length / 1000),
    allIntervalsHold: share(
      count(own, ({ byLook }) => byLook.flat().every(({ together }) => together)),
      own.length,
    ),
    single: singles,
    ...(isEqual
      ? {
          toldApart: share(
            count(own, ({ verdicts }) => verdicts.some((verdict) => verdict !== 'open')),
            own.length,
          ),
          toldApartTuned: share(
            count(own, ({ tunedVerdicts }) => tunedVerdicts.some((verdict) => verdict !== 'open')),
            own.length,
          ),
        }
      : {
          verdicts: study.aYear.map((more, at) => ({
            aYear: more,
            right: share(
              count(own, ({ verdicts }) => verdicts[at] === (more < 0 ? 'cheaper' : 'dearer')),
              own.length,
            ),
            wrong: share(
              count(own, ({ verdicts }) => verdicts[at] === (more < 0 ? 'dearer' : 'cheaper')),
              own.length,
            ),
          })),
        }),
  };
}
