/** How long a study will take: all rows checked, a few units run, the rest reckoned from these. */
import { unitsOf } from '../../questions/sites/units.js';
import { supplyOfBase } from '../../questions/sites/study.js';
import { say } from '../print.js';
import { checkedSites, must, openStudy, rowText, type SitesArguments } from '../run-sites.js';
import { withRunner } from '../with-runner.js';
import { USUAL_PARTS } from './run-merge.js';

const FEW = 4;
const CORES = [1, 2, 8, 64, 1000];
const HOUR = 3_600_000;

export async function runEstimate(args: SitesArguments, of: number | undefined): Promise<void> {
  const study = await openStudy(args);
  must(supplyOfBase(study.base, args.base));
  const sites = checkedSites(study);
  const units = unitsOf(study.table).length;
  const every = Math.max(1, Math.floor(sites.length / FEW));
  const some = sites.filter((_, at) => at % every === 0).slice(0, FEW);
  const times = await withRunner('running days', 1, async (runner) => {
    const each: number[] = [];
    for (const site of some) {
      const before = process.cpuUsage();
      await rowText(study, site, runner);
      const { user, system } = process.cpuUsage(before);
      each.push((user + system) / 1000);
    }
    return each;
  });
  const mean = times.reduce((sum, one) => sum + one, 0) / times.length;
  const parts = of ?? USUAL_PARTS;
  const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;
  say(
    `${count(units)} sites; ${some.length} of them took ${seconds(Math.min(...times))} to ${seconds(Math.max(...times))} of one core, so all need about ${hours(mean * units)} of one core.`,
  );
  for (const cores of CORES.filter((one) => one === 1 || one < 2 * units))
    say(
      `${count(cores)} ${cores === 1 ? 'core' : 'cores'}: about ${hours((mean * units) / Math.min(cores, units))}`,
    );
  say(
    `In ${count(parts)} parts: ${count(Math.ceil(units / parts))} at most in a part, about ${seconds(mean * Math.ceil(units / parts))} each, and the start of each part on top. Ask for 1 core and 300 MB of memory a part.`,
  );
}

const count = (value: number): string => value.toLocaleString('en');

const hours = (ms: number): string =>
  ms < HOUR / 10 ? `${Math.ceil(ms / 1000)} s` : `${(ms / HOUR).toFixed(1)} hours`;
