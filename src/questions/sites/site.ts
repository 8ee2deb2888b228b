/** A row of the table as a scenario: the base with the row's values, checked as any scenario is. */
import type { Problem } from '../../scenario/problems.js';
import { isWithin } from '../../scenario/path.js';
import { withoutRaw, withRawValue } from '../../scenario/raw-paths.js';
import { checkTree } from '../../scenario/read-scenario.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { compile } from '../../scenario/compile.js';
import { fill } from '../../scenario/defaults.js';
import { isGroup, unwrap } from '../../scenario/tree.js';
import type { Opened } from '../question.js';
import type { Result } from '../result.js';
import { busiestHour, meanStayMinutes } from '../size/house-measures.js';
import { cellProblem } from './cell.js';
import type { BaseFigures } from './columns.js';
import type { SiteLine, SiteTable, TillFiles } from './table.js';

export interface Site {
  readonly line: SiteLine;
  readonly opened: Opened;
}

/** What every site starts from. */
export interface Base {
  readonly opened: Opened;
  readonly figures: BaseFigures;
  /** Seed of the study; each site has days of its own. */
  readonly seed: string;
  /** What sites with a till of their own start from, by `tillKey`. */
  readonly tills?: ReadonlyMap<string, Base>;
}

export const tillKey = ({ file, map }: TillFiles): string => JSON.stringify([file, map]);

export function baseOf(opened: Opened, seed: string | undefined): Base {
  const model = compile(opened.scenario, piecesPerRackOf);
  const raw =
    isGroup(opened.raw) && 'alternatives' in opened.raw
      ? withoutRaw(opened.raw, ['alternatives'])
      : opened.raw;
  return {
    opened,
    figures: {
      raw,
      filled: fill(unwrap(raw).tree).tree,
      guestsAnHour: busiestHour(model),
      stayMinutes: meanStayMinutes(model),
    },
    seed: seed ?? opened.scenario.seed,
  };
}

/** The seed of a site: sites do not share their days, so that errors of one are not those of all. */
const seedOf = ({ seed }: Base, { id }: SiteLine): string => `${seed}/${id}`;

/** One site, or every problem of its row at its place in the table. */
export function siteOf(line: SiteLine, table: SiteTable, base: Base): Result<Site> {
  const problems: Problem[] = [];
  const { figures } =
    (line.till === null ? undefined : base.tills?.get(tillKey(line.till))) ?? base;
  let tree = figures.raw;
  for (const { name, edit } of table.columns) {
    const cell = line.cells.get(name);
    if (cell === undefined) continue;
    const edited = edit(tree, cell, figures);
    if ('tree' in edited) tree = edited.tree;
    else problems.push(cellProblem(table.file, line.line, name, cell, edited));
  }
  tree = withRawValue(tree, ['name'], line.name);
  tree = withRawValue(tree, ['seed'], seedOf(base, line));
  const place = { line: line.line, column: 0 };
  const read = checkTree(tree, () => place, table.file, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) problems.push(...read.problems.map((one) => inColumn(one, line, table)));
  return problems.length > 0 || !read.ok
    ? { ok: false, problems }
    : { ok: true, value: { line, opened: read } };
}

/** A problem of a value that a cell gave is that of its column. */
function inColumn(found: Problem, line: SiteLine, { columns }: SiteTable): Problem {
  const column = columns.find(({ name, path }) => line.cells.has(name) && isWithin(found.at, path));
  return column === undefined ? found : { ...found, path: column.name };
}

/** All sites, or the problems of all rows. @param lines those to check; absent: all */
export function sitesOf(
  table: SiteTable,
  base: Base,
  lines: readonly SiteLine[] = table.lines,
): Result<readonly Site[]> {
  const sites: Site[] = [];
  const problems: Problem[] = [];
  for (const line of lines) {
    const site = siteOf(line, table, base);
    if (site.ok) sites.push(site.value);
    else problems.push(...site.problems);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: sites };
}
