/** The letter as HTML: everything in it is text, nothing in it runs, and it can be read by anybody. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cautionsFor, foodCode } from '../../src/tell/cautions.js';
import { letterCharts } from '../../src/questions/size/charts/letter-charts.js';
import { contrast, dark, light, print } from '../../src/tell/colours.js';
import { cssString, escapeHtml } from '../../src/tell/escape-html.js';
import { letterParts, reportHtml, type ReportParts } from '../../src/letter/letter.js';
import { drawnCharts } from '../../src/tell/drawn-chart.js';
import { anyText } from '../tell/any-text.js';
import { fixtureAnswer, fixtureContext, fixtureGivenStock, fixtureRisk } from '../tell/fixture.js';

async function parts(name?: string): Promise<ReportParts> {
  const rename = (): string | undefined => name;
  const answer = fixtureAnswer(rename, name ?? 'Tern & Tide');
  const context = fixtureContext(rename);
  const charts = await drawnCharts(letterCharts(answer, context, [fixtureRisk()]));
  const inputs =
    name === undefined
      ? context.inputs
      : context.inputs.map((input) => ({
          ...input,
          path: name,
          value: name,
          source: name,
          range: [name, name] as const,
        }));
  return {
    answer:
      name === undefined
        ? answer
        : { ...answer, seed: name, warnings: [{ code: name, message: name, path: name }] },
    context,
    charts,
    inputs,
    cautions: cautionsFor(context),
    version: '0.1.0',
  };
}

const plainParts = parts('Plain');
const usualParts = parts();

/** Tags of a document, as a tokenizer would see them outside style: name and attributes. */
const tagsOf = (html: string): string[] =>
  html.replace(/<style>[\s\S]*?<\/style>/g, '').match(/<\/?[a-z!][^>]*>/gi) ?? [];
const shapeOf = (html: string): string =>
  tagsOf(html)
    .map((tag) => tag.match(/^<\/?[a-z0-9!]+/i)![0])
    .join(' ');

const hostile = [
  '</script><script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  `' onmouseover='alert(1)`,
  '</style><style>*{display:none}</style>',
  '\u202Eevil\u2066\u200F',
  '<!--',
  '&lt;b&gt;',
  '\u0000\u001B[2J',
  'x'.repeat(10_000),
  '\uD800',
];

describe('the letter', () => {
  it('is the same bytes each time', async () => {
    expect(reportHtml(await parts())).toBe(reportHtml(await usualParts));
  });

  it('has the stock that allows for inputs beside the plain one, where that was asked for', async () => {
    const plain = await usualParts;
    const { answer } = plain;
    const share = (level: number) => ({
      level,
      low: level - 0.02,
      high: level + 0.02,
      confidence: 0.95,
    });
    const found = {
      inputs: 46,
      draws: 200,
      daysEach: 5,
      plain: share(0.861),
      stock: answer.stock.map(({ ware, pieces }) => ({ ware, pieces: pieces + 3 })),
      spend: answer.spend + 97.5,
      held: share(0.953),
    };
    const { measured, order, ...rest } = letterParts({
      ...plain,
      answer: { ...answer, allowingForInputs: found },
    });
    expect(measured).toContain('lasts on 86.1\u00A0% of days only');
    expect(measured).toContain('€97.50 more, and it lasts on 95.3\u00A0%');
    for (const { pieces } of answer.stock)
      expect(order).toContain(`<td>${pieces}</td><td>${pieces + 3}</td>`);
    expect(order).toContain('200 times, with 5 days each');
    const without = letterParts(plain);
    expect(without.measured).not.toContain('in its range');
    const { measured: _, order: __, ...same } = without;
    expect(rest).toEqual(same);
  });

  it.each(hostile.map((name, i) => [i, name] as const))(
    'hostile name %i stays text wherever it lands',
    async (_, name) => {
      const plain = reportHtml(await plainParts);
      const html = reportHtml(await parts(name));
      expect(
        shapeOf(html)
          .replaceAll(' <wbr', '')
          .replace(/ <text| <\/text| <g| <\/g| <path/g, ''),
      ).toBe(
        shapeOf(plain)
          .replaceAll(' <wbr', '')
          .replace(/ <text| <\/text| <g| <\/g| <path/g, ''),
      );
      expect(html.match(/<\/style>/g)).toHaveLength(1);
      for (const tag of tagsOf(html))
        expect(tag.replace(/"[^"]*"/g, '""')).not.toMatch(/^<(script|img)|\son\w+=/i);
      expect(html).not.toMatch(/(?!\n)\p{Cc}|[\p{Cs}\u202A-\u202E\u2066-\u2069]/u);
      expect(html.length).toBeLessThan(plain.length + 60_000);
    },
  );

  it('has a part on recorded days only where some were tried, with what sets its tables', async () => {
    const recorded = '<h2>How this would have done</h2>';
    const html = reportHtml({ ...(await usualParts), recorded });
    expect(html).toContain(`<section data-part="recorded">${recorded}</section>`);
    expect(html).toContain('table.section');
    expect(reportHtml(await usualParts)).not.toContain('data-part="recorded"');
  });

  it('fetches and runs nothing', async () => {
    const html = reportHtml(await usualParts);
    expect(html).toContain(
      `content="default-src 'none'; font-src data:; style-src 'unsafe-inline'; img-src data:`,
    );
    for (const tag of tagsOf(html))
      expect(tag).not.toMatch(/^<(script|link|img|iframe|object|base|form)|\s(src|href|on\w+)=/i);
    expect(html).not.toMatch(/url\((?!#)|@import/);
  });

  it('refuses a picture that holds more than shapes and text', async () => {
    const good = await usualParts;
    for (const svg of [
      '<svg ><script>1</script></svg>',
      '<svg onload="x"></svg>',
      '<svg ><a href="http://x">y</a></svg>',
      '<p>',
      '<svg ><foreignObject/></svg>',
    ]) {
      expect(() => reportHtml({ ...good, charts: [{ ...good.charts[0]!, svg }] })).toThrow(
        'more than shapes and text',
      );
    }
  });

  it('opens and closes every element in order', async () => {
    const open: string[] = [];
    for (const tag of tagsOf(reportHtml(await usualParts))) {
      const name = tag.match(/^<\/?([a-z0-9]+)/i)?.[1] ?? '';
      if (name === '' || /^(meta|wbr)$/.test(name) || tag.endsWith('/>')) continue;
      if (tag.startsWith('</')) expect(open.pop()).toBe(name);
      else open.push(name);
    }
    expect(open).toEqual([]);
  });

  it('names its language; tables have captions and heads with a scope; ids are used once', async () => {
    const html = reportHtml(await usualParts);
    expect(html).toContain('<html lang="en">');
    for (const table of html.match(/<table[\s\S]*?<\/table>/g)!)
      expect(table).toMatch(/<caption[ >]/);
    for (const head of html.match(/<th[ >][^>]*/g)!) expect(head).toContain('scope=');
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('headings go down one level at a time', async () => {
    const levels = [...reportHtml(await usualParts).matchAll(/<h([1-6])/g)].map(([, level]) =>
      Number(level),
    );
    expect(levels[0]).toBe(1);
    for (let i = 1; i < levels.length; i += 1)
      expect(levels[i]! - levels[i - 1]!).toBeLessThanOrEqual(1);
  });

  it('begins with the sentence, puts assumed inputs first, and says what it is not', async () => {
    const html = reportHtml(await usualParts);
    expect(html.indexOf('class="lead"')).toBeLessThan(html.indexOf('<table'));
    expect(html.indexOf('>Assumed<')).toBeGreaterThan(0);
    expect(html.indexOf('>Assumed<')).toBeLessThan(html.indexOf('>Common practice<'));
    expect(html.indexOf('>Published<')).toBeLessThan(html.indexOf('>Measured<'));
    expect(html).toContain('it is not a guarantee');
    expect(html).toContain('seed 1');
  });

  it('says what inputs are in words, numbers their sources, and folds away what it does not use', async () => {
    const html = reportHtml(await usualParts);
    expect(html).toContain('How long guests stay <span class="path"><bdi>guests.<wbr>dwell');
    expect(html).toContain('Length of a wash cycle: <bdi>machine 1</bdi> <span');
    expect(html).toMatch(/guests\.<wbr>dwell.*?<td>default, 1<\/td>/);
    expect(html).toMatch(/<ol class="sources small">\n<li>from memory<\/li>/);
    expect(html).toContain('2 of 5 inputs are assumed');
    expect(html.indexOf('machines[0].<wbr>water')).toBeGreaterThan(
      html.indexOf('1 more input, which this letter does not use'),
    );
  });

  it('is written for a given stock too', async () => {
    const html = reportHtml({ ...(await usualParts), answer: fixtureGivenStock() });
    expect(html).toContain('The stock that was tested');
    expect(html).toContain('Drinks short of Medium cup');
  });
});

describe('escaping', () => {
  it('leaves no sign that means something in HTML', () => {
    fc.assert(
      fc.property(anyText(), (text) => {
        expect(escapeHtml(text)).not.toMatch(/[<>"']|&(?!(amp|lt|gt|quot|#39);)/);
        expect(cssString(text)).toMatch(/^"([A-Za-z0-9 ]|\\[0-9a-f]{1,6} )*"$/);
      }),
      { seed: 20 },
    );
  });
});

describe('contrast', () => {
  /** WCAG 2.2: black on white is 21 : 1; #767676 on white is the known lightest grey that passes 4.5 : 1 (4.54). */
  it('is computed as WCAG defines it', () => {
    expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 9);
    expect(contrast('#767676', '#FFFFFF')).toBeCloseTo(4.54, 2);
    expect(contrast('#777777', '#FFFFFF')).toBeLessThan(4.5);
  });

  it.each([['light', light] as const, ['dark', dark] as const, ['print', print] as const])(
    'holds AA in %s',
    (_, colours) => {
      for (const text of [colours.ink, colours.faint, colours.accent, colours.alarm])
        expect(contrast(text, colours.ground)).toBeGreaterThanOrEqual(4.5);
      expect(contrast(colours.line, colours.ground)).toBeGreaterThanOrEqual(3);
    },
  );
});

describe('cautions', () => {
  it('go with what the house has', () => {
    const context = fixtureContext();
    expect(cautionsFor(context).map(({ id }) => id)).toEqual([
      'scalds',
      'sanitising',
      'services',
      'chemicals',
      'chipped',
      'brokenGlass',
      'lifting',
      'stacks',
    ]);
    expect(
      cautionsFor({ ...context, ware: context.ware.filter(({ kind }) => kind !== 'glass') }).map(
        ({ id }) => id,
      ),
    ).not.toContain('brokenGlass');
    expect(cautionsFor({ ...context, machines: [] }).map(({ id }) => id)).not.toContain(
      'chemicals',
    );
    expect(
      cautionsFor({ ...context, machines: [], hotDrinks: false }).map(({ id }) => id),
    ).not.toContain('scalds');
  });

  it('each name whose rules outrank them', () => {
    for (const { defersTo, text, title } of cautionsFor(fixtureContext())) {
      expect(title).not.toBe('');
      expect(text.length).toBeGreaterThan(30);
      expect(defersTo.length).toBeGreaterThan(5);
    }
  });

  /** FDA Food Code 4-501.110, 4-501.112, 4-703.11(B), as tabled in the published checks. */
  it('carry the temperatures of the Food Code', () => {
    const published = JSON.parse(
      readFileSync(new URL('../../shared/checks/published.json', import.meta.url), 'utf8'),
    ) as { id: string; expected: Record<string, [number, number]> }[];
    const expected = (id: string): Record<string, [number, number]> =>
      published.find((one) => one.id === id)!.expected;
    const pair = ({
      celsius,
      fahrenheit,
    }: {
      celsius: number;
      fahrenheit: number;
    }): [number, number] => [celsius, fahrenheit];
    expect(pair(foodCode.wash.stationarySingleTemperature)).toEqual(
      expected('foodcode-wash').stationarySingleTemp,
    );
    expect(pair(foodCode.wash.stationaryDualTemperature)).toEqual(
      expected('foodcode-wash').stationaryDualTemp,
    );
    expect(pair(foodCode.wash.chemicalLeast)).toEqual(
      expected('foodcode-wash').chemicalSanitizingMin,
    );
    expect(pair(foodCode.rinse.most)).toEqual(expected('foodcode-rinse').maxAtManifold);
    expect(pair(foodCode.rinse.least)).toEqual(expected('foodcode-rinse').minOther);
    expect(pair(foodCode.rinse.leastStationarySingleTemperature)).toEqual(
      expected('foodcode-rinse').minStationarySingleTemp,
    );
    expect(pair(foodCode.utensilSurface)).toEqual(expected('foodcode-surface').utensilSurface);
  });

  it('tell a chemical machine from a hot one', () => {
    const text = (sanitises: 'hot' | 'chemical' | 'unknown'): string =>
      cautionsFor({ ...fixtureContext(), machines: [{ name: 'Machine', sanitises }] }).find(
        ({ id }) => id === 'sanitising',
      )!.text;
    expect(text('hot')).toContain('82 °C (180 °F)');
    expect(text('chemical')).toContain('49 °C (120 °F)');
    expect(text('chemical')).not.toContain('82 °C');
    expect(text('unknown')).toContain('49 °C (120 °F)');
  });
});
