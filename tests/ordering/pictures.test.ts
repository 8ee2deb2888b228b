/** Charts and drawing of an order: they compile without a warning, say what they show, and are to scale. */
import { describe, expect, test } from 'vitest';
import { storageSchema } from '../../src/ordering/storage-schema.js';
import { storageLayout } from '../../src/ordering/storage.js';
import { landedCost, landedCostTable } from '../../src/questions/order/charts/landed-cost.js';
import {
  shelfOverMonths,
  shelfOverMonthsTable,
} from '../../src/questions/order/charts/shelf-over-months.js';
import { drawMachineTop } from '../../src/questions/order/machine-top.js';
import { formatsFor } from '../../src/tell/format.js';
import { renderSvg } from '../../src/tell/render-svg.js';
import { sampleSheet, sampleSlice, sampleSupply } from './sheet-sample.js';

const context = {
  locale: 'en-IE',
  formats: formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: 420 }),
};
const drawn = async (
  spec: Parameters<typeof renderSvg>[0],
): Promise<{ readonly svg: string; readonly warnings: readonly string[] }> => {
  const warnings: string[] = [];
  return {
    svg: await renderSvg(spec, { onWarning: (message) => warnings.push(message) }),
    warnings,
  };
};

describe('charts', () => {
  test('pieces on the shelf, of every ware', async () => {
    const sheet = await sampleSheet({ supply: sampleSupply({ ...sampleSlice, orders: 4 }) });
    for (const line of sheet.lines) {
      const { svg, warnings } = await drawn(
        shelfOverMonths({ course: line.course, name: line.name }, context),
      );
      expect(warnings).toEqual([]);
      expect(svg).toContain(`par ${line.par}`);
      if (line.reorderPoint !== null) expect(svg).toContain(`order &lt; ${line.reorderPoint}`);
      expect(shelfOverMonthsTable({ course: line.course, name: line.name }).rows).toHaveLength(
        line.course.points.length,
      );
    }
    // Years are told apart on the axis, and no month has a wrong name: the range runs from March 2026 to March 2028.
    const { svg } = await drawn(
      shelfOverMonths({ course: sheet.lines[0]!.course, name: 'Cup' }, context),
    );
    for (const label of ['2026', '2027', '2028']) expect(svg).toContain(`>${label}<`);
  });

  test('landed cost against order size', async () => {
    const sheet = await sampleSheet();
    for (const line of sheet.lines.filter(({ landedBySize }) => landedBySize.length > 0)) {
      const input = {
        name: line.name,
        currency: 'EUR',
        costs: ['Goods', 'Freight', 'Tax'],
        points: line.landedBySize,
        chosenPieces: line.pieces,
      };
      const { svg, warnings } = await drawn(landedCost(input, context));
      expect(warnings).toEqual([]);
      expect(svg).toContain(`${line.pieces} ordered`);
      expect(landedCostTable(input).rows).toHaveLength(line.landedBySize.length);
    }
    expect(() =>
      landedCost(
        { name: 'x', currency: 'EUR', costs: ['Goods'], points: [], chosenPieces: null },
        context,
      ),
    ).toThrow(RangeError);
  });
});

describe('the machine top', () => {
  const wares = [
    {
      id: 'cup',
      name: 'Medium <cup> & more',
      par: 62,
      diameterMm: 89.5,
      handleMm: 28.5,
      massG: 275,
      onMachine: true,
      warmth: 1.3,
      peakUsesPerHour: 60,
    },
    {
      id: 'saucer',
      name: 'Saucer',
      par: 70,
      diameterMm: 140,
      handleMm: 0,
      massG: 205,
      onMachine: false,
      warmth: 0,
      peakUsesPerHour: 80,
    },
  ];

  test('a circle a stack, as wide as the vessel and where the layout has it; a unit is a millimetre', () => {
    const layout = storageLayout(storageSchema.parse({ top: { width: '600 mm' } }), wares);
    const svg = drawMachineTop(layout);
    const circles = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="44.75"/g)].map(
      ([, x, y]) => [Number(x), Number(y)],
    );
    const [, left, back] = /<rect x="([\d.]+)" y="([\d.]+)" width="600" height="380"/
      .exec(svg)!
      .map(Number);
    expect(circles).toEqual(layout.stacks.map(({ xMm, yMm }) => [left! + xMm, back! + yMm]));
    // 6 columns of 93.5 mm; a fourth row would push the handles over the front.
    expect(circles).toHaveLength(18);
  });

  test('names are escaped, what stands below is told, and an empty top says so', () => {
    const svg = drawMachineTop(storageLayout(storageSchema.parse({ top: {} }), wares));
    expect(svg).toContain('Medium &lt;cup&gt; &amp; more: ');
    expect(svg).toContain('Saucer: 0 on top, 70 in reserve');
    expect(svg.match(/<(?!\/)/g)!.length - svg.match(/\/>/g)!.length).toBe(
      svg.match(/<\//g)!.length,
    );
    expect(
      drawMachineTop(storageLayout(storageSchema.parse({ top: {} }), wares.slice(1))),
    ).toContain('nothing stands here');
  });
});
