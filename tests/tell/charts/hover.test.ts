/** What pictures tell when pointed at: in words, escaped, few enough, and for the eye and the pointer alone. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { letterCharts } from '../../../src/questions/size/charts/letter-charts.js';
import {
  MOST_SENTENCES,
  tellingRows,
  tellingStrips,
  thinned,
} from '../../../src/tell/charts/hover.js';
import { withTitles } from '../../../src/tell/charts/svg-titles.js';
import { formatsFor } from '../../../src/tell/format.js';
import { onlyShapes } from '../../../src/tell/html-picture.js';
import { renderSvg } from '../../../src/tell/render-svg.js';
import { fixtureAnswer, fixtureContext, fixtureRisk } from '../fixture.js';

const charts = () => letterCharts(fixtureAnswer(), fixtureContext(), [fixtureRisk()]);
const ids = charts().map(({ id }) => id);
const drawn = (id: string): Promise<string> =>
  renderSvg(charts().find((one) => one.id === id)!.spec, { idPrefix: id });
const titlesOf = (svg: string): string[] =>
  [...svg.matchAll(/<title>([^<]*)<\/title>/g)].map(([, text]) => text!);

describe.each(ids)('%s', (id) => {
  it('tells a sentence of every point, with figures, none too many', async () => {
    const svg = await drawn(id);
    const titles = titlesOf(svg);
    expect(titles.length).toBeGreaterThan(10);
    // Two pictures one above the other tell at most so much each.
    expect(titles.length).toBeLessThanOrEqual(2 * MOST_SENTENCES);
    for (const title of titles) {
      expect(title).toMatch(/[a-z]{3}/);
      expect(title).not.toMatch(/NaN|undefined|null|\[object/);
    }
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('has one role and one label: those of the whole picture', async () => {
    const svg = await drawn(id);
    const root = /^<svg [^>]*>/.exec(svg)![0];
    expect(root).toMatch(/ role="img" aria-label="[^"]{40,}"/);
    expect(svg.slice(root.length)).not.toMatch(/ (?:role|aria-[a-z]+)="/);
  });

  it('is taken by the letter as shapes and text', async () => {
    const svg = await drawn(id);
    expect(onlyShapes(svg)).toBe(svg);
  });
});

it('the pieces off the shelf are sentence with stock, place and the day in twenty, at a time of day', async () => {
  const { evidence, stock, tightest } = fixtureAnswer();
  const ware = stock.findIndex((line) => line.ware === tightest.ware);
  const step = 20;
  const { count, clock } = formatsFor(fixtureContext());
  const off = evidence!.mean[ware]![step]!.reduce((sum, pieces) => sum + pieces, 0);
  const titles = titlesOf(await drawn('places-through-rush'));
  const title = titles.find((one) => one.startsWith(clock(step * evidence!.stepMinutes)));
  expect(title).toBe(
    `08:40: on an average day ${count(Math.round(off))} of 62 medium cups are not on the shelf, ${count(Math.round(evidence!.mean[ware]![step]![0]!))} of them in use; on 1 day in 20, ${evidence!.offShelf[ware]!.q95[step]} or more`,
  );
});

describe('strips', () => {
  const valuesOf = (
    layers: ReturnType<typeof tellingStrips>,
  ): { from: number; to: number; sentence: string }[] =>
    (
      layers as unknown as { data: { values: { from: number; to: number; sentence: string }[] } }[]
    ).flatMap(({ data }) => data.values);
  const points = fc
    .uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 400 })
    .map((list) => list.toSorted((a, b) => a - b).map((at) => ({ at, sentence: `at ${at}` })));

  it('lie side by side from the first point to the last, each about its own', () => {
    fc.assert(
      fc.property(points, (list) => {
        const strips = valuesOf(tellingStrips(list, {}));
        expect(strips.length).toBeLessThanOrEqual(MOST_SENTENCES);
        expect(strips.at(-1)!.to).toBe(list.at(-1)!.at);
        strips.forEach(({ from, to, sentence }, i) => {
          const at = Number(sentence.slice(3));
          expect(from <= at && at <= to).toBe(true);
          if (i > 0) expect(from).toBe(strips[i - 1]!.to);
        });
      }),
      { seed: 20 },
    );
  });

  it('are none where there is nothing to tell', () => {
    expect(tellingStrips([], {})).toEqual([]);
    expect(tellingRows([], {})).toEqual([]);
  });

  it('thinning keeps the last, the order, and at most so many', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer(), { maxLength: 500 }),
        fc.integer({ min: 1, max: 80 }),
        (list, most) => {
          const kept = thinned(
            list.map((value, at) => ({ value, at })),
            most,
          );
          expect(kept.length).toBeLessThanOrEqual(most);
          expect(kept.length).toBeGreaterThanOrEqual(Math.min(list.length, Math.ceil(most / 2)));
          if (list.length > 0) expect(kept.at(-1)!.at).toBe(list.length - 1);
          for (let i = 1; i < kept.length; i++)
            expect(kept[i]!.at).toBeGreaterThan(kept[i - 1]!.at);
        },
      ),
      { seed: 20 },
    );
  });

  it('are unseen, and drawn last so that the pointer reaches them', async () => {
    const svg = await renderSvg(charts()[0]!.spec, { bare: true });
    const strips = svg.slice(svg.indexOf('<g class="unseen">'));
    expect(strips).toMatch(
      /^<g class="unseen">(?:<path d="[^"]+" fill="#[0-9a-f]{6}" opacity="0"><title>[^<]+<\/title><\/path>)+(?:<\/g>)+<\/svg>$/,
    );
  });
});

it('a hostile name stays text in what is sentence', async () => {
  const name = `</title><script>alert(1)</script> role="x" aria-label="y" & 'z`;
  const x = { field: 'at', type: 'quantitative' as const };
  const svg = await renderSvg({
    data: { values: [{ at: 1 }, { at: 2 }] },
    layer: [
      { mark: 'point', encoding: { x } },
      ...tellingStrips(
        [1, 2].map((at) => ({ at, sentence: name })),
        x,
      ),
    ],
  });
  expect(svg).not.toContain('<script');
  expect(titlesOf(svg).some((title) => title.includes('&lt;/title&gt;&lt;script&gt;'))).toBe(true);
  expect(onlyShapes(svg)).toBe(svg);
});

describe('SVG made lean', () => {
  it('a label becomes the title of its shape, of a group it goes', () => {
    expect(
      withTitles(
        '<svg a="1"><g role="graphics-object" aria-label="all"><path aria-label="10 &lt; 12" role="graphics-symbol" d="M0,0"/></g></svg>',
      ),
    ).toBe('<svg a="1"><g><path d="M0,0"><title>10 &lt; 12</title></path></g></svg>');
    expect(withTitles('<text aria-label="x" y="1">a</text>')).toBe(
      '<text y="1"><title>x</title>a</text>',
    );
  });

  it('an attribute that only reads like a role stays', () => {
    expect(withTitles('<path font-family="a role=" d="M1,2"/>')).toBe(
      '<path font-family="a role=" d="M1,2"/>',
    );
  });

  it('places are thousandths of a pixel, signs that part numbers stay', () => {
    expect(
      withTitles(
        '<path transform="translate(1.23456,-7)" d="M1.00049,2L3e-7-0.00001h19.499999999999986"/>',
      ),
    ).toBe('<path transform="translate(1.235,-7)" d="M1,2L0-0h19.5"/>');
  });

  it('what no eye sees goes, what has a colour stays', () => {
    expect(
      withTitles(
        '<path class="background" aria-hidden="true" d="M0,0h390v240h-390Z"/><path class="foreground" d="" display="none"/>',
      ),
    ).toBe('');
    expect(withTitles('<path class="background" d="M0,0h1v1h-1Z" fill="#fff"/>')).toBe(
      '<path d="M0,0h1v1h-1Z" fill="#fff"/>',
    );
  });
});
