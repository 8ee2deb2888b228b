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
import { collectionsWorkbook } from './workbook.js';

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
      files: async () => [await collectionsWorkbook(study.value)],
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
    else problems.push(...inRows(read.problems, id, table.value, collection.file));
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, all };
}

/** Problems of a piece stand in its row of the table; what is wrong with its price and that of its quote, once. */
function inRows(
  problems: readonly Problem[],
  collection: string,
  vessels: readonly Vessel[],
  file: string,
): Problem[] {
  const rowOf = (one: Problem, group: Path): Problem | null => {
    const vessel = group.every((key, i) => one.at[i] === key)
      ? vessels.find(({ id }) => id === one.at[group.length])
      : undefined;
    return vessel === undefined
      ? null
      : inTable(['row', vessel.row, ...one.at.slice(group.length + 1)], one, file);
  };
  const quotes = ['supply', 'suppliers', `collection-${collection}`, 'quotes'];
  const isPrice = ({ path }: Problem): boolean => path === 'price';
  // Of a price the quote says all that the table may have: that of a carton too.
  const quoted = problems.flatMap((one) => rowOf(one, quotes) ?? []);
  const priced = new Set(quoted.filter(isPrice).map(({ line }) => line));
  const others = problems.flatMap((one): Problem[] => {
    if (rowOf(one, quotes) !== null) return [];
    const row = rowOf(one, ['ware']);
    if (row === null) return [one];
    return isPrice(row) && priced.has(row.line) ? [] : [row];
  });
  return [...quoted, ...others];
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
