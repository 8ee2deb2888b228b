/** Alternatives, uncertain inputs and measuring over sites: sums held against laws, and a site against the comparison of its scenario. */
import fc from 'fast-check';
import { sampleRankCorrelation } from 'simple-statistics';
import { beforeAll, describe, expect, it } from 'vitest';
import { inThisThread } from '../../../src/cafe/runner.js';
import { candidatesOf } from '../../../src/questions/compare/alternatives.js';
import { compareStudy } from '../../../src/questions/compare/study.js';
import { acrossAnswer, sumOfSpans } from '../../../src/questions/sites/across/answer.js';
import { chanceCheaper, siteDraws, sumOfSites } from '../../../src/questions/sites/across/drawn.js';
import { drawRows, tableRows, measureRows } from '../../../src/questions/sites/across/files.js';
import { measuredSites } from '../../../src/questions/sites/across/measured.js';
import {
  acrossRow,
  type AcrossRow,
  type ComparedRow,
  type DrawnRow,
  type MeasureRow,
} from '../../../src/questions/sites/across/rows.js';
import { baseOf, sitesOf, type Base, type Site } from '../../../src/questions/sites/site.js';
import { readTable } from '../../../src/questions/sites/table.js';
import { unitsOf, type Asked, type Unit } from '../../../src/questions/sites/units.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { accepted, changed } from '../../scenario/a-scenario.js';

describe('units of a study over sites', () => {
  it('are each site and draw once, whatever is asked', () => {
    const lines = ['a', 'b', 'c'].map((id) => ({ id })) as never;
    fc.assert(
      fc.property(fc.boolean(), fc.nat(45), fc.boolean(), (compare, draws, measure) => {
        const units = unitsOf({ lines }, { compare, draws, measure });
        expect(new Set(units.map(({ id }) => id)).size).toBe(units.length);
        for (const site of [0, 1, 2]) {
          const own = units.filter((unit) => unit.site === site);
          const drawn = own.flatMap(({ work }) =>
            work.what === 'draws'
              ? Array.from({ length: work.to - work.from + 1 }, (_, at) => work.from + at)
              : [],
          );
          expect(drawn).toEqual(Array.from({ length: draws }, (_, at) => at + 1));
          const rest = own.filter(({ work }) => work.what !== 'draws').length;
          const more = compare || measure || draws > 0;
          expect(rest).toBe(more ? Number(compare) + Number(measure) : 1);
        }
      }),
      { seed: 3, numRuns: 30 },
    );
  });
});

describe('sums over sites', () => {
  const draws = (site: string, costs: readonly (number | null)[]) =>
    siteDraws(site, [
      {
        unit: '',
        houses: ['base', 'other'],
        stock: costs.map((cost) => [cost, cost]),
        total: costs.map((cost, at) => [cost, at % 4 === 0 && cost !== null ? cost - 1 : cost]),
      },
    ]);

  it('of draws are wider where what is off is off at every site', () => {
    const costs = Array.from({ length: 200 }, (_, at) => 1000 + at);
    const one = sumOfSites([draws('a', costs)], 's');
    expect(one.apart).toEqual(one.alike);
    const nine = sumOfSites(
      Array.from({ length: 9 }, (_, at) => draws(`s${at}`, costs)),
      's',
    );
    const [alike, apart] = [nine.alike!, nine.apart!];
    expect(alike.low).toBe(9 * 1010);
    expect(alike.high).toBe(9 * 1190);
    // Nine independent uniform costs: a third of the width, give or take what 200 draws leave open.
    const width = (apart.high - apart.low) / (alike.high - alike.low);
    expect(width).toBeGreaterThan(0.25);
    expect(width).toBeLessThan(0.48);
  });

  it('count draws in which a house is cheaper, without those it cannot have', () => {
    const found = chanceCheaper([draws('a', [10, 20, 30, 40, null, 50])], 'other')!;
    expect(found.level).toBeCloseTo(1 / 5, 12);
    expect(chanceCheaper([draws('a', [10])], 'missing')).toBe(null);
  });

  it('of independent intervals grow with the root of their number', () => {
    const span = { difference: 10, low: 6, high: 16 };
    expect(sumOfSpans([])).toBe(null);
    expect(sumOfSpans(Array.from({ length: 16 }, () => span))).toEqual({
      difference: 160,
      low: 160 - 16,
      high: 160 + 24,
    });
  });

  it('name the site first whose morning narrows them most, and all sites together last', () => {
    const width = fc.integer({ min: 1, max: 60 });
    const left = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(width, width, left), { minLength: 1, maxLength: 6 }), (all) => {
        const range = (down: number, up: number) => ({
          cost: 100,
          costLow: 100 - down,
          costHigh: 100 + up,
          pieces: 20,
          piecesLow: 20 - down / 4,
          piecesHigh: 20 + up / 4,
        });
        const found = measuredSites(
          all.map(([down, up, stays], at) => ({
            site: `s${at}`,
            row: {
              unit: '',
              now: range(down, up),
              foretold: range(down * stays, up * stays),
              parts: [],
            },
          })),
        )!;
        const root = (of: (one: (typeof all)[number]) => number): number =>
          Math.sqrt(all.reduce((sum, one) => sum + of(one) ** 2, 0));
        expect(found.now.costHigh - found.now.cost).toBeCloseTo(
          root(([, up]) => up),
          9,
        );
        expect(found.foretold.cost - found.foretold.costLow).toBeCloseTo(
          root(([down, , stays]) => down * stays),
          9,
        );
        const narrows = found.sites.map((one) => one.narrows);
        expect(narrows).toEqual(narrows.toSorted((a, b) => b - a));
        const wide = ({ costLow, costHigh }: typeof found.now): number => costHigh - costLow;
        expect(found.sites.at(-1)!.withAbove).toBeCloseTo(
          1 - wide(found.foretold) / wide(found.now),
          9,
        );
        // Pieces are a quarter of the money here, so they narrow alike.
        for (const one of found.sites) expect(one.narrowsPieces).toBeCloseTo(one.narrows, 9);
      }),
      { seed: 4, numRuns: 40 },
    );
  });
});

describe('a study over sites', () => {
  const asked: Asked = { compare: true, draws: 3, measure: true };
  const DAYS = 100;
  let base: Base;
  let sites: readonly Site[];
  let units: Unit[];
  let rows: AcrossRow[];

  beforeAll(async () => {
    // Prices that differ so far that what ware costs goes by them, whatever the days.
    const priced = changed(
      'cup: { price: 4 EUR,',
      'cup: { price: { value: 4 EUR, basis: assumed, range: [1 EUR, 90 EUR] },',
    );
    const text = `${changed('staysIn: 40 %', 'staysIn: { value: 40 %, basis: assumed, range: [30 %, 60 %] }', priced)}alternatives:
  hood: { change: { washing.machines: [{ class: hood }] } }
  dear-cup: { change: { ware.cup.price: 9 EUR } }
`;
    const opened = accepted(text);
    base = baseOf(opened, undefined);
    const table = readTable(
      new TextEncoder().encode('id,machines,guests\na,,24\nb,hood,40\n'),
      't.csv',
      opened,
    );
    if (!table.ok) throw new Error('table');
    const found = sitesOf(table.value, base);
    if (!found.ok) throw new Error('sites');
    sites = found.value;
    units = unitsOf(table.value, asked);
    rows = [];
    for (const { id, site, work } of units)
      if (work.what !== 'size')
        rows.push(
          await acrossRow(id, work, sites[site]!.opened, base, inThisThread(), {
            level: undefined,
            days: DAYS,
            compare: true,
            sites: 1,
          }),
        );
  }, 60_000);

  it('says of each site what the comparison of its scenario says', async () => {
    const { opened } = sites[0]!;
    const { alternatives } = base.opened.scenario;
    const whole = candidatesOf(
      {
        ...opened,
        scenario: { ...opened.scenario, alternatives },
        raw: {
          ...(opened.raw as object),
          alternatives: (base.opened.raw as { alternatives: unknown }).alternatives,
        },
      },
      'a',
      { piecesPerRack: piecesPerRackOf },
    );
    if (!whole.ok) throw new Error('candidates');
    const own = await compareStudy(whole.all, inThisThread(), {
      days: DAYS,
      noLevel: true,
      piecesPerRack: piecesPerRackOf,
    });
    const row = rows[0] as ComparedRow;
    expect(row.best).toBe(own.ranking.best);
    expect(row.held).toBe(own.ranking.differences);
    for (const [at, one] of row.alternatives.entries()) {
      const { said, totalAgainstBase, stockAgainstBase } = own.alternatives[at + 1]!;
      expect(one.said).toBe(said);
      for (const end of ['difference', 'low', 'high'] as const) {
        expect(one.total[end]).toBeCloseTo(totalAgainstBase![end], 4);
        expect(one.stock[end]).toBeCloseTo(stockAgainstBase![end], 4);
      }
    }
    expect(row.alternatives.map(({ said }) => said)).toContain('dearer');
  }, 60_000);

  it('leaves out what a site has already, with the reason, and draws it nowhere', () => {
    const [, there] = rows as ComparedRow[];
    expect(there!.alternatives.map(({ id }) => id)).toEqual(['dear-cup']);
    expect(there!.not).toEqual([{ id: 'hood', why: 'changes nothing' }]);
    const drawn = rows.filter((row) => 'houses' in row);
    expect(drawn.map(({ houses }) => houses)).toEqual([
      ['base', 'hood', 'dear-cup'],
      ['base', 'dear-cup'],
    ]);
  });

  it('draws an input alike at all sites, and a draw alike however draws are cut into units', async () => {
    const run = (site: number, from: number, to: number) =>
      acrossRow('u', { what: 'draws', from, to }, sites[site]!.opened, base, inThisThread(), {
        level: undefined,
        days: 30,
        compare: false,
        sites: 2,
      }) as Promise<DrawnRow>;
    const [whole, first, rest] = [await run(0, 1, 3), await run(0, 1, 1), await run(0, 2, 3)];
    expect([...first.stock, ...rest.stock]).toEqual(whole.stock);
    expect([...first.total, ...rest.total]).toEqual(whole.total);
    const costs = async (site: number): Promise<number[]> =>
      (await run(site, 1, 12)).stock.map(([cost]) => cost!);
    // Days differ, so not wholly; with ranks of their own it would be about 0 ± 0.3.
    expect(sampleRankCorrelation(await costs(0), await costs(1))).toBeGreaterThan(0.85);
  });

  it('stands in one table, with every draw and every site to measure', () => {
    const answer = acrossAnswer(sites, units, rows, base, asked, {
      level: undefined,
      days: DAYS,
    });
    expect(answer.table.map(({ site, house }) => `${site}/${house}`)).toEqual([
      'a/base',
      'a/hood',
      'a/dear-cup',
      'b/base',
      'b/hood',
      'b/dear-cup',
    ]);
    const hood = answer.alternatives[0]!;
    const { total } = (rows[0] as ComparedRow).alternatives[0]!;
    expect([hood.at, hood.notAt]).toEqual([1, 1]);
    expect(hood.total!.difference).toBeCloseTo(total.difference, 6);
    expect(hood.total!.low).toBeCloseTo(total.low, 6);
    expect(answer.measure!.sites.map(({ site }) => site).toSorted()).toEqual(['a', 'b']);
    expect(answer.measure!.now.cost).toBeCloseTo(
      rows
        .filter((row): row is MeasureRow => 'foretold' in row)
        .reduce((sum, { now }) => sum + now.cost, 0),
      6,
    );
    // A head, and 3 draws of 3 and of 2 houses.
    expect(drawRows(answer)).toHaveLength(1 + 3 * 3 + 3 * 2);
    for (const table of [drawRows(answer), tableRows(answer), measureRows(answer)])
      expect(new Set(table.map((row) => row.length)).size).toBe(1);
  });
});
