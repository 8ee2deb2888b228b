/** The whole: rows of a few sites on few days, and the order that is made from them. */
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { inThisThread } from '../../../src/cafe/runner.js';
import type { SitesAnswer } from '../../../src/questions/sites/answer.js';
import { csvText, siteRows } from '../../../src/questions/sites/csv.js';
import { sitesPage } from '../../../src/questions/sites/page.js';
import { rowOf, type UnitRow } from '../../../src/questions/sites/row.js';
import { baseOf, sitesOf, type Base, type Site } from '../../../src/questions/sites/site.js';
import { sitesAnswer, supplyOfBase } from '../../../src/questions/sites/study.js';
import { readTable } from '../../../src/questions/sites/table.js';
import { sitesBlocks } from '../../../src/questions/sites/tell.js';
import { scenarioStudy } from '../../../src/questions/size/scenario-study.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { sitesWorkbook } from '../../../src/questions/sites/workbook.js';
import { writeText } from '../../../src/tell/write-text.js';
import { solver } from '../../ordering/solver.js';

const TABLE = `id,name,drop,opening,seats,guests,have
a,Ash House,north,2027-03-15,20,40,
b,Birch House,south,2027-03-15,26,64,
c,<b>Cedar,south,2027-04-12,30,70,saucer=200
`;
let base: Base;
let sites: readonly Site[];
let rows: UnitRow[];
let answer: SitesAnswer;

const answerOf = (some: readonly UnitRow[], sparesAt: 'sites' | 'drop' = 'sites') => {
  const supply = supplyOfBase(base, 'base.yaml');
  if (!supply.ok) throw new Error('supply');
  return sitesAnswer(sites, some, base, supply.value, {
    level: undefined,
    date: '2027-01-11',
    sparesAt,
    loadSolver: solver,
  });
};

beforeAll(async () => {
  const read = readScenario(readFileSync('scenarios/1-commuter-bar.yaml'), 'base.yaml', {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error('base');
  base = baseOf(read, undefined);
  const table = readTable(new TextEncoder().encode(TABLE), 't.csv', read);
  const found = table.ok ? sitesOf(table.value, base) : table;
  if (!found.ok) throw new Error(found.problems[0]!.message);
  sites = found.value;
  rows = [];
  for (const { line, opened } of sites)
    rows.push(await rowOf(line.id, opened, inThisThread(), { days: 40, watch: 5 }));
  answer = await answerOf(rows);
}, 120_000);

describe('sites together', () => {
  it('have each site as the size of its scenario has it', async () => {
    const { answer: own } = await scenarioStudy(sites[1]!.opened, inThisThread(), { days: 40 });
    const site = answer.sites[1]!;
    expect(Object.values(site.pieces)).toEqual(own.stock.map(({ pieces }) => pieces));
    expect(site.certified).toEqual(own.certified);
    expect(site.cost).toBeCloseTo(own.cost, 6);
    expect(answer.sites[2]!.add['saucer']).toBe(0);
  });

  it('are ordered for so that every drop has its pars, and for no more than each by itself', () => {
    const order = answer.order!;
    expect(order.drops.map(({ drop, sites: own }) => [drop, own])).toEqual([
      ['north', ['a']],
      ['south', ['b', 'c']],
    ]);
    for (const { lines } of order.drops)
      for (const { par, have, pieces } of lines) expect(pieces + have).toBeGreaterThanOrEqual(par);
    const slack = 1 + 2 * order.cost.gap!;
    expect(order.cost.proved).toBe(true);
    expect(order.cost.totalMinor).toBeLessThanOrEqual(order.alone!.totalMinor * slack);
    expect(order.oneDrop!.totalMinor).toBeLessThanOrEqual(order.cost.totalMinor * slack);
    // Consignments and lines are the same money.
    const north = order.drops[0]!;
    expect(
      north.consignments.reduce((sum, one) => sum + one.totalMinor - one.handlingMinor, 0),
    ).toBe(north.lines.reduce((sum, { landedMinor }) => sum + landedMinor, 0));
  });

  it('need fewer spares where these are kept at the drop', async () => {
    const atDrop = await answerOf(rows, 'drop');
    const [own, shared] = [answer.order!, atDrop.order!].map(({ cost }) => cost.totalMinor);
    expect(shared).toBeLessThan(own!);
  });

  it('are ordered for in time: 7 days of lead time before the day of opening', () => {
    const { orders, costMinor, atOnceMinor, eachMinor } = answer.rollOut!;
    expect(orders.flatMap(({ parts }) => parts.map(({ orderBy }) => orderBy))[0]).toBe(
      '2027-03-07',
    );
    expect(orders.flatMap(({ sites: own }) => own).toSorted()).toEqual(['a', 'b', 'c']);
    expect(costMinor).toBeLessThanOrEqual(Math.min(atOnceMinor, eachMinor));
  });

  it('go on where one cannot be sized, which is said', async () => {
    const failed = await answerOf([rows[0]!, { unit: 'b', failed: 'it is too large' }, rows[2]!]);
    expect(failed.sites.map(({ id }) => id)).toEqual(['a', 'c']);
    expect(failed.failed).toMatchObject([{ id: 'b', failed: 'it is too large' }]);
    const context = contextOf(base.opened.scenario, base.opened.inputs, '0', piecesPerRackOf);
    expect(writeText(sitesBlocks(failed, context), { width: 100, all: true })).toContain(
      'Birch House cannot be sized: it is too large',
    );
  });

  it('make a workbook with a sheet of sites, order, roll-out and spares, each as long as what it holds', async () => {
    const context = contextOf(base.opened.scenario, base.opened.inputs, 't', piecesPerRackOf);
    const parts = unzipSync(await sitesWorkbook(answer, context));
    const names = [
      ...strFromU8(parts['xl/workbook.xml']!).matchAll(/<sheet [^>]*?name="([^"]*)"/g),
    ];
    expect(names.map(([, name]) => name)).toEqual(['Sites', 'Order', 'When to order', 'Spares']);
    // Three sites are too few to fit a guide.
    expect(answer.guide).toBeNull();
    const rowsOf = (sheet: number): number =>
      [...strFromU8(parts[`xl/worksheets/sheet${sheet}.xml`]!).matchAll(/<row /g)].length;
    const lines = answer.order!.drops.flatMap((drop) => drop.lines);
    expect([1, 2, 4].map(rowsOf)).toEqual([
      siteRows(answer, context).length,
      1 + lines.length,
      1 + answer.spares.lines.length,
    ]);
    // Every amount of the order stands in its sheet, to the cent.
    const order = strFromU8(parts['xl/worksheets/sheet2.xml']!);
    for (const { landedMinor } of lines) expect(order).toContain(`<v>${landedMinor / 100}</v>`);
  });

  it('stand in one table and one page, with nothing that a browser would take for markup', async () => {
    const context = contextOf(base.opened.scenario, base.opened.inputs, '0', piecesPerRackOf);
    const table = siteRows(answer, context);
    expect(new Set(table.map((row) => row.length)).size).toBe(1);
    expect(csvText(table).split('\r\n')).toHaveLength(5);
    const page = await sitesPage(answer, context, {
      letters: new Map([['b', 't.b.html']]),
      hashOf: () => 'sha256-x',
      typefaces: '',
    });
    expect(page.match(/<tr data-text=/g)).toHaveLength(3);
    expect(page.match(/<svg /g)).toHaveLength(3);
    expect(page).toContain('<a href="t.b.html">');
    expect(page).not.toContain('<b>Cedar');
    expect(page).not.toContain('NaN');
  });
});
