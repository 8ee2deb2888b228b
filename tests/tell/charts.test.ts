/** Charts: they compile without a warning, draw the same bytes each time, and say what their data say. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tableText, type Chart } from '../../src/tell/charts/chart-table.js';
import { letterCharts } from '../../src/questions/size/charts/letter-charts.js';
import {
  decidedPart,
  riskAgainstStock,
  riskAgainstStockTable,
} from '../../src/questions/size/charts/risk-against-stock.js';
import { clockAxis, palette, titleOf, withoutTitle } from '../../src/tell/charts/style.js';
import { breakLines, evenLines, textWidth } from '../../src/tell/charts/text-width.js';
import { contrast, dark, light } from '../../src/tell/colours.js';
import { formatsFor } from '../../src/tell/format.js';
import { renderSvg, standaloneSvg } from '../../src/tell/render-svg.js';
import { fixtureAnswer, fixtureContext, fixtureRisk } from './fixture.js';

const everyChart = (): Chart[] => letterCharts(fixtureAnswer(), fixtureContext(), [fixtureRisk()]);
const ids = everyChart().map(({ id }) => id);

describe('every chart of a letter', () => {
  it('is there, with an id of its own', () => {
    expect(ids).toEqual([
      'risk-against-stock',
      'places-through-rush',
      'arrivals-and-seats',
      'staff-and-machine',
    ]);
  });

  it('of pieces is not there where none is needed', () => {
    const answer = fixtureAnswer();
    const none = { ...answer, stock: answer.stock.map((line) => ({ ...line, pieces: 0 })) };
    expect(letterCharts(none, fixtureContext(), [fixtureRisk()]).map(({ id }) => id)).toEqual([
      'arrivals-and-seats',
      'staff-and-machine',
    ]);
  });

  it.each(ids)(
    '%s compiles and draws without a warning, in any locale and without a clock',
    async (id) => {
      for (const context of [
        fixtureContext(),
        {
          ...fixtureContext(),
          locale: 'de-DE',
          openingMinute: null,
          seats: null,
          capacity: { machines: null, makers: null, hands: null, clearers: null },
        },
      ]) {
        const warnings: string[] = [];
        const { spec } = letterCharts(fixtureAnswer(), context, [fixtureRisk()]).find(
          (one) => one.id === id,
        )!;
        const svg = await renderSvg(spec, { onWarning: (message) => warnings.push(message) });
        expect(warnings).toEqual([]);
        expect(svg.startsWith('<svg ')).toBe(true);
        expect(svg).not.toMatch(/NaN|undefined|Infinity/);
      }
    },
  );

  it('draws the same bytes each time, whatever was drawn before', async () => {
    const draw = async (charts: readonly Chart[]): Promise<Map<string, string>> => {
      const drawn = new Map<string, string>();
      for (const { id, spec } of charts) drawn.set(id, await renderSvg(spec, { idPrefix: id }));
      return drawn;
    };
    const first = await draw(everyChart());
    const again = await draw(everyChart().toReversed());
    for (const id of ids) expect(again.get(id)).toBe(first.get(id));
  });

  it.each(everyChart().map((one) => [one.id, one] as const))(
    '%s has words, and a table whose rows are as long as its columns',
    (_, { title, words, table, spec }) => {
      expect(title).toBe(titleOf(spec));
      expect(words.length).toBeGreaterThan(40);
      expect(table.rows.length).toBeGreaterThan(2);
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
      for (const row of tableText(table, formatsFor(fixtureContext())))
        for (const text of row) expect(text).not.toMatch(/NaN|undefined/);
    },
  );
});

it('a warning of the compiler is passed on (the check above can fail)', async () => {
  const warnings: string[] = [];
  await renderSvg(
    {
      data: { values: [{ a: 1 }] },
      mark: 'bar',
      encoding: { x: { field: 'a', type: 'quantitative', bin: true, aggregate: 'mean' }, y: {} },
    } as never,
    { onWarning: (message) => warnings.push(message) },
  );
  expect(warnings.length).toBeGreaterThan(0);
});

it('a picture without its title says it to screen readers all the same', async () => {
  const { spec, title } = everyChart()[0]!;
  const bare = await renderSvg(spec, { bare: true });
  expect(bare).toContain(`aria-label="${title}`);
  expect(bare).not.toContain(`>${title.slice(0, 20)}`);
  expect(titleOf(withoutTitle(spec))).toBe('');
});

it('ids inside a picture begin with the prefix given', async () => {
  const spec = {
    data: { values: [{ a: 1, b: 2 }] },
    mark: { type: 'point', clip: true },
    encoding: { x: { field: 'a', type: 'quantitative' }, y: { field: 'b', type: 'quantitative' } },
  } as const;
  const svg = await renderSvg(spec, { idPrefix: 'mine' });
  expect(svg).toContain('id="mine-1"');
  expect(svg).toContain('url(#mine-1)');
  expect(svg).not.toMatch(/id="clip\d/);
});

it('the curve of risk marks the point nearest to the stock chosen', () => {
  const context = fixtureContext();
  const look = { locale: context.locale, formats: formatsFor(context) };
  const curve = fixtureRisk();
  const nearest = curve.points.find(({ stock }) => stock === 304)!;
  expect(titleOf(riskAgainstStock({ ...curve, chosen: 305 }, look))).toContain(
    look.formats.percent(nearest.risk),
  );
  expect(() => riskAgainstStock({ ...curve, points: [] }, look)).toThrow(RangeError);
  expect(riskAgainstStockTable(curve).rows).toHaveLength(curve.points.length);
});

it('the curve of risk shows where it is decided, and what some pieces fewer or more cost', () => {
  const context = fixtureContext();
  const curve = fixtureRisk();
  const part = decidedPart(curve);
  expect(part.length).toBeLessThan(curve.points.length);
  expect(Math.max(...part.map(({ risk }) => risk))).toBeLessThanOrEqual(0.1);
  expect(part.at(-1)).toBe(curve.points.at(-1));
  expect(part.some(({ stock }) => stock === curve.chosen)).toBe(true);
  // A stock that runs out more often than that is not cut off its own curve.
  expect(decidedPart({ ...curve, chosen: 260 })).toBe(curve.points);
  expect(decidedPart({ ...curve, level: 0.8 }).length).toBeGreaterThan(part.length);
  // The curve has a point every four pieces: those nearest to five away are four away; a piece costs 3.
  const [{ words, whole }] = letterCharts(fixtureAnswer(), context, [curve]) as [Chart];
  expect(words).toContain('4 pieces fewer would save €12.00:');
  expect(words).toContain('4 pieces more would cost €12.00:');
  expect(whole).toBeDefined();
});

it('parties in the slots of the chart add up to the parties that arrive', () => {
  const { spec } = everyChart().find(({ id }) => id === 'arrivals-and-seats')!;
  const rows = (spec as unknown as { vconcat: { data: { values: { parties: number }[] } }[] })
    .vconcat[0]!.data.values;
  const arriving = fixtureAnswer().evidence!.guests.partiesArriving.reduce(
    (sum, one) => sum + one,
    0,
  );
  expect(rows.reduce((sum, { parties }) => sum + parties, 0)).toBeCloseTo(arriving, 9);
});

it('time axes are marked at round moments of the clock', () => {
  const formats = formatsFor({ ...fixtureContext(), openingMinute: 7 * 60 + 20 });
  const { values, labelExpr } = clockAxis(180, formats, 'time', 7 * 60 + 20);
  expect(values).toEqual([40, 100, 160]);
  expect(labelExpr).toContain('"40":"08:00"');
});

describe('width of text', () => {
  /** Advance widths of Liberation Sans (metric-compatible with the usual office sans), read from the font: H 722, i 222, space 278 of 1000. */
  it('is at least what a common sans-serif takes', () => {
    expect(textWidth('H', 1000)).toBeGreaterThanOrEqual(722);
    expect(textWidth('i', 1000)).toBeGreaterThanOrEqual(222);
    expect(textWidth(' ', 1000)).toBeGreaterThanOrEqual(278);
  });

  it('broken lines keep all words, in order, and fit where words do', () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 120, max: 500 }),
        (parts, width) => {
          const text = parts.join(' ');
          for (const lines of [breakLines(text, width, 14), evenLines(text, width, 14)]) {
            expect(lines.join(' ')).toBe(text);
            for (const line of lines)
              if (line.includes(' ')) expect(textWidth(line, 14)).toBeLessThanOrEqual(width);
          }
          expect(evenLines(text, width, 14)).toHaveLength(breakLines(text, width, 14).length);
        },
      ),
      { seed: 20 },
    );
  });
});

it('a picture as a file of its own is XML with a ground and a colour for its ink', async () => {
  const svg = standaloneSvg(await renderSvg(everyChart()[0]!.spec));
  expect(svg).toMatch(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n<svg color="#1F2328" /);
  expect(svg).toContain('<rect width="100%" height="100%" fill="#FFFFFF"/>');
});

/** WCAG 2.2, 1.4.11: graphical objects hold 3 : 1 against what is next to them; lines and points use these. */
it('colours of lines and points stand out from the page, light and dark', () => {
  for (const ground of [light.ground, dark.ground]) {
    for (const colour of [palette.blue, palette.vermilion])
      expect(contrast(colour, ground)).toBeGreaterThanOrEqual(3);
  }
});

it('hostile names are drawn as text', async () => {
  const name = `</svg><script>alert(1)</script>"'\u202E]]>&`;
  const answer = fixtureAnswer();
  const [{ spec }] = letterCharts(
    { ...answer, stock: answer.stock.map((line) => ({ ...line, name })) },
    fixtureContext(),
    [],
  ) as [Chart];
  const svg = await renderSvg(spec);
  expect(svg).toContain('alert(1)');
  expect(svg).not.toContain('<script');
  expect(svg).not.toContain('\u202E');
  expect(svg.match(/<\/svg>/g)).toHaveLength(1);
  expect(svg.endsWith('</svg>')).toBe(true);
});
