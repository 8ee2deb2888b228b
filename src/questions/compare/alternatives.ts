/** The alternatives of a scenario: each a changed copy, checked like any scenario, its problems placed in its own lines. */
import type { Money } from '../../quantities/money.js';
import { nameOf } from '../../quantities/name.js';
import { edited, type House } from '../../scenario/edited.js';
import { patched, placedIn, type Patched } from '../../scenario/patched.js';
import type { Path } from '../../scenario/path.js';
import { inOrder, problem, problemAt, type Flaw, type Problem } from '../../scenario/problems.js';
import type { ReadOptions, ReadResult } from '../../scenario/read-scenario.js';
import { rawValueAt } from '../../scenario/raw-paths.js';
import type { Scenario } from '../../scenario/scenario.js';
import { isGroup } from '../../scenario/tree.js';
import { written } from '../../scenario/written.js';
import { isToPlanFor } from './plan-for.js';

export type Opened = Extract<ReadResult, { ok: true }>;

/** A scenario to compare: the base, or an alternative read. */
export interface Candidate extends House {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  /** Money beside what is worked out. */
  readonly once: Money | undefined;
  readonly aYear: Money | undefined;
  /** Something to plan for, such as other guests or a machine that fails, and no choice. */
  readonly planFor: boolean;
  /** What was changed, as written: "clearing.every: 5 min". */
  readonly changes: readonly string[];
}

export type Candidates =
  | { readonly ok: true; readonly all: readonly Candidate[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const without = (raw: unknown): unknown =>
  isGroup(raw)
    ? Object.fromEntries(Object.entries(raw).filter(([key]) => key !== 'alternatives'))
    : raw;
/** All that tells one house from another. */
export const bare = ({ kinds, calendar, ...scenario }: Scenario): string =>
  JSON.stringify({
    ...scenario,
    name: '',
    alternatives: undefined,
    ...(kinds === undefined ? { calendar } : { kinds: kinds.map((kind) => bare(kind.scenario)) }),
  });

/** The base and all its alternatives, or every problem that these have. */
export function candidatesOf(
  opened: Opened,
  fileName: string,
  options: ReadOptions = {},
): Candidates {
  const { scenario, raw, positionOf } = opened;
  const baseRaw = scenario.kinds?.[0]!.raw ?? without(raw);
  const base: Candidate = {
    id: 'base',
    name: 'As it is',
    note: '',
    scenario,
    inputs: opened.inputs,
    raw: baseRaw,
    once: undefined,
    aYear: undefined,
    planFor: false,
    changes: [],
  };
  const problems: Problem[] = [];
  const all: Candidate[] = [base];
  for (const [id, slice] of Object.entries(scenario.alternatives ?? {})) {
    const at: Path = ['alternatives', id];
    const flaws: Flaw[] = [];
    if (id === 'base')
      flaws.push({
        ...problemAt(at, undefined, 'is the name of the scenario as it is', 'choose another name'),
        onKey: true,
      });
    const inFile = rawValueAt(raw, at) as { readonly change?: Record<string, unknown> };
    const patch = (house: House): Patched => patched(house.raw, slice, inFile.change ?? {}, at);
    const own = patch(base);
    flaws.push(...own.flaws);
    for (const kind of scenario.kinds?.slice(1) ?? [])
      flaws.push(
        ...(own.flaws.length > 0 ? [] : patch(kind).flaws).map((flaw) => ({
          ...flaw,
          rule: `${flaw.rule} on the kind of day ${kind.id}`,
        })),
      );
    if (scenario.kinds !== undefined)
      flaws.push(
        ...own.origins
          .filter(({ path }) => path[0] === 'calendar')
          .map(({ from }) => ({
            ...problemAt(
              from,
              String(from.at(-1)),
              'is the same year for all that is compared, as its kinds of day say',
              'leave it out, or compare two files',
            ),
            onKey: true,
          })),
      );
    if (flaws.length > 0) {
      problems.push(
        ...flaws.map((flaw) => problem(flaw, fileName, positionOf(flaw.path, flaw.onKey))),
      );
      continue;
    }
    const read = edited(
      base,
      (house) => patch(house).tree,
      fileName,
      options,
      placedIn(at, own.origins, positionOf),
    )!;
    if (!read.ok) {
      problems.push(
        ...read.problems.map((one) => ({
          ...one,
          message: `in the alternative ${id}: ${one.message}`,
        })),
      );
      continue;
    }
    if (
      bare(read.scenario) === bare(scenario) &&
      slice.once === undefined &&
      slice.aYear === undefined
    ) {
      problems.push(
        problem(
          {
            ...problemAt(
              at,
              undefined,
              'changes nothing',
              'write under change what is to be different, such as clearing.every: 5 min',
            ),
            onKey: true,
          },
          fileName,
          positionOf(at, true),
        ),
      );
      continue;
    }
    const changes = [
      ...Object.entries(inFile.change ?? {}).map(([key, value]) => `${key}: ${written(value)}`),
      ...Object.entries(slice.scale ?? {}).map(([key, value]) => `${key} × ${value}`),
      ...(slice.without ?? []).map((key) => `without ${key}`),
    ];
    all.push({
      id,
      name: nameOf(id, slice),
      note: slice.note ?? '',
      scenario: read.scenario,
      inputs: read.inputs,
      raw: read.raw,
      once: slice.once,
      aYear: slice.aYear,
      planFor: isToPlanFor(
        scenario,
        read.scenario,
        slice.once !== undefined || slice.aYear !== undefined,
      ),
      changes,
    });
  }
  return problems.length > 0 ? { ok: false, problems: inOrder(problems) } : { ok: true, all };
}
