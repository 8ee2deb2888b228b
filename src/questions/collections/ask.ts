/** Collections, asked and answered: each in place of the menu's vessels, checked as a scenario of its own. */
import { readVessels, type Vessel } from '../../ordering/vessels-file.js';
import type { Path } from '../../scenario/path.js';
import { inOrder, problem, type Problem } from '../../scenario/problems.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { checkTree } from '../../scenario/read-scenario.js';
import { collectionFlaws, withCollection } from '../../scenario/with-collection.js';
import { placed } from '../part-checks.js';
import type { Ask, Asking } from '../question.js';
import { collectionsCsv } from './csv.js';
import type { collections } from './head.js';
import { collectionsStudy, type ToCompare } from './study.js';
import { collectionsBlocks } from './tell.js';

export const ask: Ask<typeof collections> = async (asking, given) => {
  const { opened, runner, context, today, loadSolver } = asking;
  const { level, seed, days } = given;
  const read = candidates(asking);
  if (!read.ok) return { ok: false, problems: inOrder(read.problems) };
  const study = await collectionsStudy(read.all, runner, {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
    date: given.date ?? opened.scenario.supply?.date ?? today,
    loadSolver,
  });
  if (!study.ok)
    return { ok: false, problems: inOrder(placed(study.problems, opened, asking.fileName)) };
  return {
    ok: true,
    value: {
      json: study.value,
      blocks: collectionsBlocks(study.value, context),
      figures: { ending: 'collections.csv', content: collectionsCsv(study.value) },
      jsonFile: 'collections.json',
    },
  };
};

type Read =
  | { readonly ok: true; readonly all: readonly ToCompare[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The house as it is, and with each collection; or every problem of their tables. */
function candidates({ opened, fileName, beside = {}, letter }: Asking): Read {
  const { scenario, inputs, raw, positionOf } = opened;
  const slice = Object.entries(scenario.collections ?? {});
  const all: ToCompare[] = [
    { id: 'as-it-is', name: 'As it is', scenario, inputs, vessels: [], standsFor: {} },
  ];
  const at = (path: Path, value: unknown, rule: string, remedy: string): Problem =>
    problem({ path, value, rule, remedy }, fileName, positionOf(path));
  if (slice.length === 0)
    return {
      ok: false,
      problems: [
        problem(
          {
            path: [],
            value: undefined,
            rule: 'names no collections to compare',
            remedy:
              'write collections: { white: { file: white.csv, standsFor: { medium-cup: white-200 } } }',
          },
          fileName,
          { line: 1, column: 1 },
        ),
      ],
    };
  const problems: Problem[] = [];
  for (const [id, collection] of slice) {
    const bytes = beside[collection.file];
    if (bytes === undefined) {
      problems.push(
        at(
          ['collections', id, 'file'],
          collection.file,
          'was not handed over',
          letter === undefined
            ? 'ask on a command line, with the file beside the scenario'
            : 'choose this table in its box',
        ),
      );
      continue;
    }
    const table = readVessels(new TextDecoder().decode(bytes), scenario.currency);
    if (!table.ok)
      problems.push(...table.problems.map((one) => inTable(one.path, one, collection.file)));
    const flaws = collectionFlaws(scenario, id, collection, table.ok ? table.value : null);
    problems.push(
      ...flaws.map((flaw) => problem(flaw, fileName, positionOf(flaw.path, flaw.onKey))),
    );
    if (!table.ok || flaws.length > 0) continue;
    const read = checkTree(
      withCollection(raw, scenario, id, collection, table.value),
      () => positionOf(['collections', id], true),
      fileName,
      { piecesPerRack: piecesPerRackOf },
    );
    if (read.ok)
      all.push({
        id,
        name: collection.name ?? id,
        scenario: read.scenario,
        inputs: read.inputs,
        vessels: table.value,
        standsFor: collection.standsFor,
      });
    else
      problems.push(...read.problems.map((one) => rowOf(one, table.value, collection.file) ?? one));
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, all };
}

/** A problem of a piece stands in its row of the table. */
function rowOf(one: Problem, vessels: readonly Vessel[], file: string): Problem | null {
  const vessel = one.at[0] === 'ware' ? vessels.find(({ id }) => id === one.at[1]) : undefined;
  return vessel === undefined ? null : inTable(['row', vessel.row, ...one.at.slice(2)], one, file);
}

function inTable(
  path: readonly (string | number)[],
  {
    value,
    rule,
    remedy,
  }: { readonly value: unknown; readonly rule: string; readonly remedy: string },
  file: string,
): Problem {
  const [, row, ...column] = path;
  return problem(
    { path: column.length === 0 ? [] : [column.join(' ')], value, rule, remedy },
    file,
    { line: Number(row), column: 0 },
  );
}
