/**
 * What is wrong in the parts of a sound scenario that only some questions read: alternatives, the map of the
 * comparison, supply, storage, and how drinks are made. `cuptide check` tells all of it.
 */
import { readSuit } from '../suiting/read.js';
import { suitMenu, suitWare } from '../suiting/scenario-parts.js';
import { candidatesOf, type Opened } from './compare/alternatives.js';
import { mapFlaws } from './compare/map.js';
import { orderFlaws } from './order/checks.js';
import type { Path } from '../scenario/path.js';
import { inOrder, problem, type Problem } from '../scenario/problems.js';
import { rawValueAt } from '../scenario/raw-paths.js';
import { collectionFlaws } from '../scenario/with-collection.js';
import { meanMenu } from '../scenario/shares-by-time.js';
import type { ReadOptions } from '../scenario/read-scenario.js';

interface Found {
  readonly path: Path;
  readonly value: unknown;
  readonly rule: string;
  readonly remedy: string;
}

/** Problems of one part at their places in the file, each value quoted as the file has it. */
export function placed(
  found: readonly Found[],
  { raw, positionOf }: Opened,
  fileName: string,
): Problem[] {
  return found.map(({ path, value, rule, remedy }) => {
    const onKey = value !== undefined && value === path.at(-1);
    return problem(
      { path, value: rawValueAt(raw, path) ?? value, rule, remedy, onKey },
      fileName,
      positionOf(path, onKey),
    );
  });
}

/** Every problem of the parts, in the order of the file; empty where all is well. */
export function partProblems(
  opened: Opened,
  fileName: string,
  options: ReadOptions = {},
): Problem[] {
  const { scenario } = opened;
  const candidates = candidatesOf(opened, fileName, options);
  const suit =
    scenario.suit === undefined
      ? []
      : readSuit({
          currency: scenario.currency,
          staffHourMinor: scenario.staffHour.minor,
          ware: suitWare(scenario.ware),
          menu: suitMenu(meanMenu(scenario)),
          suit: scenario.suit,
        }).problems;
  return inOrder([
    ...(candidates.ok ? [] : candidates.problems),
    ...placed(
      [
        ...mapFlaws(opened),
        ...orderFlaws(scenario),
        ...Object.entries(scenario.collections ?? {}).flatMap(([id, one]) =>
          collectionFlaws(scenario, id, one, null),
        ),
        ...suit,
      ],
      opened,
      fileName,
    ),
  ]);
}
