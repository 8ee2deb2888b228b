/** How long a study will take: all rows checked, a few units of each kind run, the rest reckoned from these. */
import { supplyOfBase } from '../../questions/sites/study.js';
import type { Unit } from '../../questions/sites/units.js';
import { say } from '../print.js';
import {
  must,
  openStudy,
  rowText,
  sitesOfUnits,
  wordOf,
  type SitesArguments,
} from '../run-sites.js';
import { withRunner } from '../with-runner.js';
import { USUAL_PARTS } from './run-merge.js';

const FEW = 4;
const CORES = [1, 2, 8, 64, 1000];
const [SECOND, MINUTE, HOUR] = [1000, 60_000, 3_600_000];

export async function runEstimate(args: SitesArguments, of: number | undefined): Promise<void> {
  const study = await openStudy(args);
  must(supplyOfBase(study.base, args.base));
  const { units } = study;
  const sites = sitesOfUnits(study, units);
  const parts = of ?? USUAL_PARTS;
  let whole = 0;
  await withRunner('running days', 1, async (runner) => {
    for (const kind of new Set(units.map(({ work }) => work.what))) {
      const own = units.filter(({ work }) => work.what === kind);
      const times: number[] = [];
      for (const unit of someOf(own)) {
        const before = process.cpuUsage();
        await rowText(study, unit, sites.get(unit.site)!, runner);
        const { user, system } = process.cpuUsage(before);
        times.push((user + system) / 1000);
      }
      const all = (own.length * times.reduce((sum, one) => sum + one, 0)) / times.length;
      whole += all;
      say(
        `${KIND[kind](count(own.length))}; ${times.length} of them took ${seconds(Math.min(...times))} to ${seconds(Math.max(...times))} of one core, so all need about ${hours(all)} of one core.`,
      );
    }
  });
  for (const cores of CORES.filter((one) => one === 1 || one < 2 * units.length))
    say(
      `${count(cores)} ${cores === 1 ? 'core' : 'cores'}: about ${hours(whole / Math.min(cores, units.length))}`,
    );
  const most = Math.ceil(units.length / parts);
  say(
    `In ${count(parts)} parts: at most ${count(most)} of ${count(units.length)} ${wordOf(study)} in a part, about ${seconds((whole * most) / units.length)} each, and the start of each part on top. Ask for 1 core and 300 MB of memory a part.`,
  );
}

/** A few, from all over the table. */
function someOf(units: readonly Unit[]): Unit[] {
  const every = Math.max(1, Math.floor(units.length / FEW));
  return units.filter((_, at) => at % every === 0).slice(0, FEW);
}

const KIND: Readonly<Record<Unit['work']['what'], (units: string) => string>> = {
  size: (units) => `${units} sites`,
  compare: (units) => `Comparing at ${units} sites`,
  measure: (units) => `What to measure at ${units} sites`,
  draws: (units) => `Draws in ${units} steps, at most ten in a step`,
};

const count = (value: number): string => value.toLocaleString('en');

const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;

const hours = (ms: number): string =>
  ms < 100 * SECOND
    ? `${Math.ceil(ms / SECOND)} s`
    : ms < 100 * MINUTE
      ? `${Math.ceil(ms / MINUTE)} min`
      : `${(ms / HOUR).toFixed(1)} hours`;
