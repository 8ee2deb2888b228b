/** A till map from its text, with every problem at its place. */
import { compileTillMap, type TillMap } from '../../till/compile-map.js';
import type { TillFlaw } from '../../till/flaw.js';
import { tillMapSchema } from '../../till/schema.js';
import { parseYaml } from '../../scenario/parse-yaml.js';
import { inOrder, problem, type Problem } from '../../scenario/problems.js';
import type { PositionOf } from '../../scenario/read-scenario.js';
import { flawsOf } from '../../scenario/zod-flaws.js';

const PARTS = 'say what the columns of the export mean: columns, dates, drinks, days, hours';

export type TillMapResult =
  | { readonly ok: true; readonly map: TillMap; readonly positionOf: PositionOf }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function readTillMap(text: string | Uint8Array, fileName: string): TillMapResult {
  const parse = parseYaml(text, { what: 'a map of a till export', remedy: PARTS });
  if (isBlank(text))
    return {
      ok: false,
      problems: [
        problem(
          {
            path: [],
            value: undefined,
            rule: 'is empty',
            remedy: PARTS,
          },
          fileName,
          { line: 1, column: 1 },
        ),
      ],
    };
  if (!parse.ok)
    return {
      ok: false,
      problems: inOrder(parse.flaws.map((flaw) => problem(flaw, fileName, flaw.position))),
    };
  const { tree, positionOf } = parse.parsed;
  const form = tillMapSchema.safeParse(tree);
  if (!form.success) {
    return {
      ok: false,
      problems: inOrder(
        flawsOf(form.error.issues, tillMapSchema, tree).map((flaw) =>
          problem(flaw, fileName, positionOf(flaw.path, flaw.onKey)),
        ),
      ),
    };
  }
  const map = compileTillMap(form.data);
  return map.ok
    ? { ok: true, map: map.value, positionOf }
    : {
        ok: false,
        problems: inOrder(map.flaws.map((flaw) => tillProblem(flaw, fileName, positionOf))),
      };
}

const isBlank = (text: string | Uint8Array): boolean =>
  (typeof text === 'string' ? text : new TextDecoder().decode(text)).trim() === '';

/** A flaw of a map, an export or a base as a problem of the file that it is about. */
export function tillProblem(
  flaw: TillFlaw,
  fileName: string,
  positionOf: PositionOf | null,
): Problem {
  const { path, value, rule, remedy, line } = flaw;
  return problem(
    { path, value, rule, remedy },
    fileName,
    positionOf === null ? { line: line ?? 1, column: 1 } : positionOf(path),
  );
}
