import { compile, type TopLevelSpec } from 'vega-lite';
import { View, parse as parseVega } from 'vega';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { applyTill, unknownDrinks } from '../../src/till/apply-till.js';
import { sourceOf } from '../../src/till/yaml-nodes.js';
import { tillChart } from '../../src/till/chart.js';
import type { TillFit } from '../../src/till/fit-till.js';
import { tillBlocks } from '../../src/questions/till/tell.js';
import { writeText } from '../../src/tell/write-text.js';
import {
  countsMap,
  drawTickets,
  fitOf,
  mapFor,
  must,
  mustMap,
  plainForm,
  rushTruth,
  writeCounts,
  writeExport,
} from './sales.js';

const base = `# Tern & Tide, a café of our own invention
name: Tern & Tide
currency: EUR
staffHour: 22 EUR   # loaded

hours: { from: "07:00", to: "10:00" }   # on the door

arrivals:
  # the owner's guess
  peak: { guests: 60 / h, shape: [3, 5, 9, 7] }
  dayFactor: 0.2    # as usual

guests:
  staysIn: 35 %     # two counts in March
  drinksEach: 1.1
  secondDrink: 12 %
  dwell: { lognormal: { mean: 42 min, sd: 18 min } }

menu:
  flat-white: { share: 50 %, setting: [cup, saucer] }   # the house drink
  espresso: { share: 20 %, setting: [cup, saucer] }
  tea:
    share: 15 %     # pots
    setting: [cup, saucer]
  hot-chocolate: { share: 10 %, setting: [cup, saucer] }
  juice: { share: 5 %, setting: takeaway }

ware:
  cup: { like: medium-cup, price: 4.20 EUR }
  saucer: { like: saucer, price: 2 EUR }

seats: { count: 40, whenFull: leave }
washing: { machines: [{ class: undercounter }], partLoadWait: 6 min }
`;

const form = { ...plainForm };
const tickets = drawTickets({ ...rushTruth, days: 30 }, 'applying');
const fitBy = async (map: string): Promise<TillFit> =>
  fitOf(writeExport(tickets, form), mustMap(map));

function field(tree: unknown, ...path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>((node, key) => (node as Record<string | number, unknown>)[key], tree);
}

describe('the new scenario', async () => {
  const fit = await fitBy(mapFor(form));
  const { text, notes } = must(applyTill(base, fit));
  const tree: unknown = parse(text);

  it('starts from a base that is sound', () => {
    expect(readScenario(base, 'base.yaml').ok).toBe(true);
  });

  it('is sound, and holds the fit as measured values with their source', () => {
    const read = readScenario(text, 'new.yaml');
    expect(read.ok ? [] : read.problems).toEqual([]);
    expect(sourceOf(fit)).toBe(
      'till export sales.csv, 2020-01-01–2020-01-30, 30 days (any day of the week)',
    );
    for (const path of [
      ['arrivals', 'slots', 'parties'],
      ['arrivals', 'dayFactor'],
      ['guests', 'partySize'],
      ['guests', 'drinksEach'],
      ['menu', 'tea', 'share'],
    ]) {
      expect(field(tree, ...path, 'basis')).toBe('measured');
      expect(field(tree, ...path, 'source')).toContain(sourceOf(fit));
    }
    expect(field(tree, 'arrivals', 'slots', 'every')).toBe('15 min');
    expect(field(tree, 'arrivals', 'slots', 'parties', 'value')).toEqual(
      fit.slots.map(({ parties }) => Math.round(1000 * parties) / 1000),
    );
    expect(field(tree, 'arrivals', 'dayFactor', 'value')).toBeCloseTo(fit.dayFactor.cv, 3);
    expect(field(tree, 'guests', 'drinksEach', 'value')).toBe(1);
    expect(field(tree, 'arrivals', 'peak')).toBeUndefined();
  });

  it('keeps what the till cannot tell, and every comment but those of the arrivals it replaces', () => {
    for (const [path, value] of [
      [['guests', 'staysIn'], '35 %'],
      [['guests', 'secondDrink'], '12 %'],
      [['guests', 'dwell', 'lognormal', 'mean'], '42 min'],
      [['seats', 'count'], 40],
      [['ware', 'cup', 'price'], '4.20 EUR'],
    ] as const) {
      expect(field(tree, ...path)).toBe(value);
    }
    for (const comment of [
      '# Tern & Tide, a café',
      '# loaded',
      '# on the door',
      '# as usual',
      '# two counts in March',
      '# the house drink',
      '# pots',
    ])
      expect(text).toContain(comment);
    expect(text).not.toContain('guess');
  });

  it('has the hours of the map, and says so', () => {
    expect(field(tree, 'hours')).toEqual({ from: '08:00', to: '12:00' });
    expect(notes.join('\n')).toContain('Hours are now 08:00 to 12:00');
    const same = must(applyTill(base.replace('07:00', '08:00').replace('10:00', '12:00'), fit));
    expect(same.notes.join('\n')).not.toContain('Hours');
  });

  it('keeps drinks that are not on the till with a share of 0, and says so', () => {
    expect(field(tree, 'menu', 'juice', 'share', 'value')).toBe('0 %');
    expect(field(tree, 'menu', 'espresso', 'share', 'value')).toBe('0 %');
    expect(notes.join('\n')).toContain('The till has no item for espresso, juice');
  });

  it('has sizes and shares that sum to 1', () => {
    const sum = (values: readonly unknown[]): number =>
      values.reduce<number>(
        (all, value) => all + Math.round(100 * Number.parseFloat(String(value))),
        0,
      );
    expect(sum(Object.values(field(tree, 'guests', 'partySize', 'value') as object))).toBe(10_000);
    expect(
      sum(
        Object.values(field(tree, 'menu') as object).map((drink) => field(drink, 'share', 'value')),
      ),
    ).toBe(10_000);
  });

  it('applied to itself changes nothing', () => {
    expect(must(applyTill(text, fit)).text).toBe(text);
  });

  it('is the same from a counted report but for the party sizes', async () => {
    const counted = must(applyTill(base, await fitOf(writeCounts(tickets), mustMap(countsMap))));
    const without = (yaml: string): string =>
      yaml
        .split('\n')
        .filter((line) => !line.includes('partySize'))
        .join('\n');
    expect(without(counted.text)).toBe(without(text));
    expect(counted.text).toContain('sizes worked out from drinks and tickets a slot');
  });

  it('stays JSON where the base is JSON', () => {
    const json = must(applyTill(JSON.stringify(parse(base)), fit)).text;
    expect(JSON.parse(json)).toEqual(tree);
  });

  it('replaces arrivals of every form, and what is marked, missing or an alias', () => {
    const others = [
      base.replace(/arrivals:[^]*?usual/, 'arrivals: { steps: [{ for: 3 h, parties: 20 / h }] }'),
      base.replace(
        /arrivals:[^]*?usual/,
        'arrivals:\n  slots: { every: 30 min, parties: [1, 2, 3, 4, 5, 6] }',
      ),
      base.replace(/^guests:[^]*?18 min } }/m, ''),
      base
        .replace('share: 50 %', 'share: { value: 50 %, basis: practice }')
        .replace('drinksEach: 1.1', 'drinksEach: { value: 1.1, range: [1, 1.4] }'),
      base
        .replace(
          'espresso: { share: 20 %, setting: [cup, saucer] }',
          'espresso: &small { share: 20 %, setting: [cup, saucer] }',
        )
        .replace('hot-chocolate: { share: 10 %, setting: [cup, saucer] }', 'hot-chocolate: *small'),
    ];
    for (const other of others) {
      const fresh = must(applyTill(other, fit)).text;
      const read = readScenario(fresh, 'new.yaml');
      expect(read.ok ? [] : read.problems).toEqual([]);
      for (const path of [['arrivals'], ['guests', 'partySize'], ['guests', 'drinksEach']])
        expect(field(parse(fresh), ...path)).toEqual(field(tree, ...path));
      for (const drink of ['flat-white', 'espresso', 'tea', 'hot-chocolate', 'juice'])
        expect(field(parse(fresh), 'menu', drink, 'share')).toEqual(
          field(tree, 'menu', drink, 'share'),
        );
    }
  });

  it('divides what the till does not tell apart as the base does, and calls that assumed', async () => {
    const fused = await fitBy(
      mapFor(form).replace('flat white: flat-white', 'flat white: [flat-white, espresso]'),
    );
    const menu = field(parse(must(applyTill(base, fused)).text), 'menu');
    const shareOf = (drink: string): number =>
      Number.parseFloat(String(field(menu, drink, 'share', 'value')));
    const together = 100 * fused.groups.find(({ drinks }) => drinks.length === 2)!.share;
    expect(shareOf('flat-white')).toBeCloseTo((together * 50) / 70, 1);
    expect(shareOf('espresso')).toBeCloseTo((together * 20) / 70, 1);
    expect(field(menu, 'espresso', 'share', 'basis')).toBe('assumed');
    expect(field(menu, 'espresso', 'share', 'source')).toContain(
      '"flat white" divided among flat-white, espresso as in the base scenario',
    );
    expect(field(menu, 'tea', 'share', 'basis')).toBe('measured');
  });

  it('is refused for drinks that the base does not have, with the nearest name', async () => {
    const wrong = mustMap(
      mapFor(form)
        .replace('TEA: tea', 'TEA: teas')
        .replace('flat white: flat-white', 'flat white: [flatwhite, tea]'),
    );
    expect(
      unknownDrinks(wrong.groups, base).map(
        ({ about, path, value, rule, remedy }) =>
          `${about} ${path.join('.')} ${String(value)} ${rule}; ${remedy}`,
      ),
    ).toEqual([
      'map drinks.flat white flatwhite is not a drink of the base scenario; did you mean "flat-white"?',
      'map drinks.TEA teas is not a drink of the base scenario; did you mean "tea"?',
    ]);
    const outcome = applyTill(base, {
      ...fit,
      groups: fit.groups.map((group) => ({ ...group, drinks: ['mocha'] })),
    });
    expect(outcome.ok ? 0 : outcome.flaws.length).toBe(3);
  });

  it.each([
    ['', 'is not a scenario'],
    ['- a\n- b\n', 'is not a scenario'],
    ['name: [', 'is not a scenario'],
    ['name: A\n', 'is missing'],
    ['menu: {}\n', 'is missing'],
  ])('is refused for the base %j', (text_, rule) => {
    const outcome = applyTill(text_, fit);
    expect(outcome.ok ? [] : outcome.flaws.map((flaw) => [flaw.about, flaw.rule])).toEqual([
      ['base', rule],
    ]);
  });
});

describe('the summary', async () => {
  const odd = `Total,,,\n2020-01-31,25:00:00,9,Tea\n`;
  const fit = await fitOf(
    writeExport(tickets, form) + odd,
    mustMap(
      mapFor(form, 'days: { week: any, except: [2020-01-05] }').replace(
        'days: { week: any }\n',
        '',
      ),
    ),
  );
  const summary = writeText(tillBlocks(fit), { width: 120, all: true });

  it('tells rows, skipped lines, days, figures and what the till cannot tell', () => {
    const rows = fit.reading.rows;
    expect(summary).toMatch(new RegExp(`Rows +${rows.toLocaleString('en-GB')}\n`));
    expect(summary).toMatch(new RegExp(`no date \\(iso\\) +1 +line ${rows} \\(first: "Total"\\)`));
    expect(summary).toMatch(
      new RegExp(`no time of day +1 +line ${rows + 1} \\(first: "25:00:00"\\)`),
    );
    expect(summary).toMatch(/Used +29 {2}any day of the week, 2020-01-01 to 2020-01-30/);
    expect(summary).toMatch(/Excluded by the map +1 {2}2020-01-05/);
    expect(summary).toContain('Day factor');
    expect(summary).toContain(fit.dayFactor.cv.toFixed(3));
    for (const word of [
      'share of guests who stay in',
      'how long guests stay',
      'second drinks',
      'chi-square',
      'p = ',
    ])
      expect(summary).toContain(word);
  });

  it('begins with what was found, and fits any terminal', () => {
    const short = writeText(tillBlocks(fit), { width: 60 });
    expect(short).toMatch(/^On an average day \d+\.\d parties come/);
    expect(short).not.toContain('chi-square');
    for (const line of short.split('\n')) expect(line.length).toBeLessThanOrEqual(60);
  });

  it('has columns that line up', () => {
    const block = summary.split('\n').filter((line) => /^\d\d:\d\d /.test(line));
    expect(block.length).toBe(16);
    expect(new Set(block.map((line) => line.length)).size).toBe(1);
    expect(summary).not.toMatch(/NaN|undefined|Infinity|[ \t]\n/);
  });
});

describe('the drawing', async () => {
  const fit = await fitBy(mapFor(form));

  it('is drawn by Vega-Lite without a complaint', async () => {
    const complaints: string[] = [];
    const complain = (...args: readonly unknown[]): void => {
      complaints.push(args.join(' '));
    };
    const logger = {
      level: () => logger,
      error: complain,
      warn: complain,
      info: () => logger,
      debug: () => logger,
    };
    const { spec } = compile(tillChart(fit) as unknown as TopLevelSpec, {
      logger: logger as never,
    });
    const svg = await new View(parseVega(spec), { renderer: 'none' }).toSVG();
    expect(complaints).toEqual([]);
    expect(svg).toContain('Parties in a slot');
    expect(svg).not.toContain('NaN');
  });

  it('shows every slot and every day', () => {
    const [slots, totals] = tillChart(fit)['vconcat'] as readonly {
      readonly data?: { readonly values: readonly unknown[] };
      readonly layer: readonly {
        readonly data?: { readonly values: readonly { readonly share: number }[] };
      }[];
    }[];
    expect(slots!.data!.values.length).toBe(16);
    const observed = totals!.layer[1]!.data!.values;
    expect(observed.length).toBe(fit.days + 1);
    expect([observed[0]!.share, observed.at(-1)!.share]).toEqual([0, 1]);
  });
});
