/** Pictures where code made from text is forbidden, as a strict content policy does in a browser. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { letterCharts } from '../../../src/questions/size/charts/letter-charts.js';
import { renderSvg } from '../../../src/tell/render-svg.js';
import { shelfOverMonths } from '../../../src/questions/order/charts/shelf-over-months.js';
import { formatsFor } from '../../../src/tell/format.js';
import { fixtureAnswer, fixtureContext, fixtureRisk } from '../fixture.js';

const look = { locale: 'en-IE', formats: formatsFor(fixtureContext()) };
const course = {
  ware: 'cup',
  par: 40,
  reorderPoint: 44,
  ordersExpected: 1.2,
  points: Array.from({ length: 90 }, (_, i) => ({
    date: new Date(Date.UTC(2027, 0, 1 + 10 * i)).toISOString().slice(0, 10),
    day: 10 * i,
    mean: 60 - i / 6,
    low: 55 - Math.round(i / 5),
    high: 60 - Math.round(i / 8),
  })),
};
const specs = () => [
  ...letterCharts(fixtureAnswer(), fixtureContext(), [fixtureRisk()]).map(({ spec }) => spec),
  shelfOverMonths({ course, name: 'Cup' }, look),
];

describe('without Function and eval', () => {
  const { Function: made, eval: evaluated } = globalThis;
  const refuse = function (): never {
    throw new EvalError('code from text is forbidden');
  };
  beforeEach(() => Object.assign(globalThis, { Function: refuse, eval: refuse }));
  afterEach(() => Object.assign(globalThis, { Function: made, eval: evaluated }));

  it('every picture is drawn all the same', async () => {
    expect(() => (Reflect.get(globalThis, 'eval') as (text: string) => unknown)('1')).toThrow(
      EvalError,
    );
    for (const spec of specs()) expect(await renderSvg(spec)).toMatch(/^<svg .*<title>.*<\/svg>$/s);
  });

  it('the same expressions as code are refused (the check above can fail)', async () => {
    const [vega, { compile }] = await Promise.all([import('vega'), import('vega-lite')]);
    expect(
      () => new vega.View(vega.parse(compile(specs()[0]!).spec), { renderer: 'none' }),
    ).toThrow(EvalError);
  });
});

/** Vega's own compiler of expressions is the other way to the same picture; the two must agree. */
it('the interpreter draws what the compiler of expressions draws', async () => {
  const [vega, { compile }, { expressionInterpreter }] = await Promise.all([
    import('vega'),
    import('vega-lite'),
    import('vega-interpreter'),
  ]);
  for (const spec of specs()) {
    const compiled = compile(spec).spec;
    const byCode = await new vega.View(vega.parse(compiled), { renderer: 'none' }).toSVG();
    const byTree = await new vega.View(vega.parse(compiled, undefined, { ast: true }), {
      renderer: 'none',
      expr: expressionInterpreter,
    }).toSVG();
    expect(byTree.replace(/clip\d+/g, 'clip')).toBe(byCode.replace(/clip\d+/g, 'clip'));
  }
});

it('a shelf axis names its months where dates are plain numbers', async () => {
  const svg = await renderSvg(shelfOverMonths({ course, name: 'Cup' }, look));
  for (const label of ['2027', '2028', '2029']) expect(svg).toContain(`>${label}<`);
  // 890 days after the first: two years, one of them a leap year, and 159 days.
  expect(svg).toContain('9 June 2029: 45.2 pieces expected, nine times in ten 37 to 49');
  // The label stands where the first of its month is, by the dates alone: 390 − 66 pixels for 890 days.
  const firsts: Readonly<Record<string, number>> = { Mar: 2, Apr: 3, May: 4, Jun: 5 };
  const month = [...svg.matchAll(/translate\(([\d.]+),18\)"[^>]*><tspan>(\w+)<\/tspan>/g)].find(
    ([, , name]) => name !== undefined && Object.hasOwn(firsts, name),
  )!;
  const days = (Date.UTC(2027, firsts[month[2]!]!, 1) - Date.UTC(2027, 0, 1)) / 86_400_000;
  expect(Number(month[1])).toBeCloseTo((days / 890) * 324, 0);
});
