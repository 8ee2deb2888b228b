/** Shares that must make up the whole, at every time of day where they differ by time. */
import { parseShare } from '../quantities/numbers.js';
import { durationUnits, parseWithUnit } from '../quantities/unit-tables.js';
import type { Path } from './path.js';
import { problemAt, type Flaw } from './problems.js';
import { isGroup } from './tree.js';

/** Largest miss of a sum of shares: what rounding in binary fractions can leave behind. */
const sumTolerance = 1e-9;

/** Shares must make up the whole; says nothing while one of them cannot be read. */
export function checkSum(
  path: Path,
  shares: readonly unknown[],
  what: string,
  when: string = '',
): Flaw[] {
  const parsed = shares.map(parseShare);
  if (parsed.length === 0 || parsed.some((one) => !one.ok)) return [];
  const sum = parsed.reduce((total, one) => total + (one.ok ? one.value : 0), 0);
  if (Math.abs(sum - 1) <= sumTolerance) return [];
  const percent = Number((sum * 100).toPrecision(6));
  const gap = Number((Math.abs(1 - sum) * 100).toPrecision(6));
  return [
    problemAt(
      path,
      undefined,
      `has shares that add up to ${percent === 100 ? `${sum < 1 ? 'less' : 'more'} than 100 %` : `${percent} %`}${when}, not 100 %`,
      `${sum < 1 ? 'add' : 'take away'} ${gap} % among the ${what}`,
    ),
  ];
}

/** Shares of party sizes by size: at least one, and all of them make up the whole. */
export function checkPartySizes(shares: Readonly<Record<string, unknown>>): Flaw[] {
  const path = ['guests', 'partySize'];
  return Object.keys(shares).length === 0
    ? [problemAt(path, undefined, 'is empty', 'write { 1: 50 %, 2: 50 % }')]
    : checkSum(path, Object.values(shares), 'party sizes');
}

interface Step {
  readonly untilMs: number;
  readonly share: unknown;
}

/** A drink's share as written, as steps; null where one of its steps cannot be read. */
function stepsOf(written: unknown): readonly Step[] | null {
  if (!Array.isArray(written)) return [{ untilMs: Infinity, share: written }];
  let untilMs = 0;
  const steps: Step[] = [];
  for (const step of written as unknown[]) {
    const length = isGroup(step) ? parseWithUnit(step['for'], durationUnits) : null;
    if (!isGroup(step) || length === null || !length.ok) return null;
    untilMs += Math.round(length.value);
    steps.push({ untilMs, share: step['share'] });
  }
  return steps;
}

/** The shares of the menu's drinks, as written: one each, or steps by time of day. The first sum that misses the whole is reported. */
export function checkMenuShares(written: readonly unknown[]): Flaw[] {
  const drinks = written.map(stepsOf);
  if (drinks.includes(null)) return [];
  const all = drinks as (readonly Step[])[];
  const last = Math.max(
    0,
    ...all.flatMap((steps) => steps.map(({ untilMs }) => untilMs)).filter(Number.isFinite),
  );
  const starts = [0, ...all.flatMap((steps) => steps.map(({ untilMs }) => untilMs))]
    .filter((ms) => ms === 0 || ms < last)
    .toSorted((a, b) => a - b);
  for (const from of new Set(starts)) {
    const now = all.map((steps) => steps.find(({ untilMs }) => from < untilMs)?.share);
    const when = last === 0 ? '' : ` from minute ${Math.round(from / 60_000)} on`;
    const flaws = checkSum(['menu'], now, 'drinks', when);
    if (flaws.length > 0) return flaws;
  }
  return [];
}
