import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import poissonCdf from '@stdlib/stats-base-dists-poisson-cdf';
import type { StoredWare } from '../../src/ordering/machine-top.js';
import { storageSchema } from '../../src/ordering/storage-schema.js';
import { cellOf, overhangOf, packStacks } from '../../src/ordering/shelf-packing.js';
import { refillTrigger, storageLayout, storageProblems } from '../../src/ordering/storage.js';

const vessel = (
  id: string,
  par: number,
  diameterMm: number | null,
  more: Partial<StoredWare> = {},
): StoredWare => ({
  id,
  name: id,
  par,
  diameterMm,
  handleMm: 0,
  massG: 300,
  onMachine: true,
  warmth: 1.3,
  peakUsesPerHour: 30,
  ...more,
});
const slice = (given: object) => storageSchema.parse(given);

describe('stacks on a board', () => {
  test('equal cups on the default top: 7 × 4 cells of 94 mm', () => {
    expect(
      packStacks(
        [{ ware: 'cup', cellMm: 94, overhangMm: 0, count: 40 }],
        { widthMm: 700, depthMm: 380 },
        1,
      ),
    ).toMatchObject({ left: { cup: 12 } });
  });

  test('whatever is placed stands on the board, in no other stack’s cell', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            cellMm: fc.integer({ min: 30, max: 160 }),
            count: fc.integer({ min: 0, max: 30 }),
          }),
          { minLength: 1, maxLength: 4 },
        ),
        fc.integer({ min: 100, max: 900 }),
        fc.integer({ min: 60, max: 500 }),
        fc.integer({ min: 1, max: 3 }),
        (kinds, widthMm, depthMm, boards) => {
          const stacks = kinds.map((kind, index) => ({
            ware: `w${index}`,
            overhangMm: 0,
            ...kind,
          }));
          const { placed, left } = packStacks(stacks, { widthMm, depthMm }, boards);
          for (const { ware, cellMm, count } of stacks) {
            const own = placed.filter((stack) => stack.ware === ware);
            expect(own.length + (left[ware] ?? 0)).toBe(count);
            for (const { xMm, yMm, board } of own) {
              expect(Math.min(xMm, yMm) - cellMm / 2).toBeGreaterThanOrEqual(-1e-9);
              expect(xMm + cellMm / 2).toBeLessThanOrEqual(widthMm + 1e-9);
              expect(yMm + cellMm / 2).toBeLessThanOrEqual(depthMm + 1e-9);
              expect(board).toBeLessThan(boards);
            }
          }
          const cell = (ware: string): number => stacks.find((one) => one.ware === ware)!.cellMm;
          placed.forEach((a, index) => {
            for (const b of placed.slice(index + 1)) {
              if (a.board !== b.board) continue;
              const apart = Math.max(Math.abs(a.xMm - b.xMm), Math.abs(a.yMm - b.yMm));
              expect(apart).toBeGreaterThanOrEqual((cell(a.ware) + cell(b.ware)) / 2 - 1e-9);
            }
          });
        },
      ),
      { seed: 20, numRuns: 150 },
    );
  });

  test('a handle of up to (√2 − 1) of the cell is free, a longer one widens it', () => {
    expect(cellOf({ diameterMm: 86, handleMm: 28 }, 4)).toBe(90);
    expect(cellOf({ diameterMm: 86, handleMm: 38 }, 4)).toBeCloseTo(38 / (Math.SQRT2 - 1), 9);
  });

  test('no handle touches another vessel or reaches past the board', () => {
    const kindArb = fc.record({
      diameterMm: fc.integer({ min: 40, max: 120 }),
      handleMm: fc.constantFrom(0, 15, 22, 28, 34, 50),
      count: fc.integer({ min: 0, max: 14 }),
    });
    fc.assert(
      fc.property(
        fc.array(kindArb, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: 1, max: 2 }),
        (kinds, gapMm, boards) => {
          const stacks = kinds.map((kind, index) => ({
            ware: `w${index}`,
            cellMm: cellOf(kind, gapMm),
            overhangMm: overhangOf(kind, gapMm),
            ...kind,
          }));
          const { placed } = packStacks(stacks, { widthMm: 700, depthMm: 380 }, boards);
          const kindOf = (ware: string) => stacks.find((one) => one.ware === ware)!;
          for (const stack of placed) {
            const { diameterMm, handleMm } = kindOf(stack.ware);
            if (handleMm === 0) continue;
            // Points along the middle line of the handle, to the front and right.
            for (let step = 0; step <= 10; step++) {
              const reach = (diameterMm / 2 + (handleMm * step) / 10) / Math.SQRT2;
              const [x, y] = [stack.xMm + reach, stack.yMm + reach];
              expect(x).toBeLessThanOrEqual(700 + 1e-9);
              expect(y).toBeLessThanOrEqual(380 + 1e-9);
              for (const other of placed) {
                if (other === stack || other.board !== stack.board) continue;
                const clear =
                  Math.hypot(x - other.xMm, y - other.yMm) - kindOf(other.ware).diameterMm / 2;
                expect(clear).toBeGreaterThanOrEqual(-1e-9);
              }
            }
          }
        },
      ),
      { seed: 20, numRuns: 60 },
    );
  });
});

describe('top and reserve', () => {
  test('one ware: two high on 28 stacks, the rest in reserve', () => {
    const layout = storageLayout(slice({ top: {} }), [vessel('cup', 70, 90)]);
    expect(layout.lines).toMatchObject([{ ware: 'cup', onTop: 56, inReserve: 14 }]);
    expect(layout.stacks).toHaveLength(28);
    expect(layout.massG).toBe(56 * 300);
    expect(layout.warnings.map(({ code }) => code)).toEqual(['no-mass-limit']);
  });

  test('one high where the manual says so, and never over the mass limit', () => {
    expect(
      storageLayout(slice({ top: { high: 1 } }), [vessel('cup', 70, 90)]).lines[0]!.onTop,
    ).toBe(28);
    const light = storageLayout(slice({ top: { massLimit: '10 kg' } }), [
      vessel('cup', 70, 90),
      vessel('small', 40, 66, { massG: 160 }),
    ]);
    expect(light.massG!).toBeLessThanOrEqual(10_000);
    expect(light.warnings).toEqual([]);
  });

  test('pieces are all accounted for, drawn stacks hold what stands on top, and saucers stay below', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            par: fc.nat(90),
            diameter: fc.option(fc.integer({ min: 50, max: 120 })),
            on: fc.boolean(),
          }),
          { minLength: 1, maxLength: 4 },
        ),
        (kinds) => {
          const wares = kinds.map(({ par, diameter, on }, index) =>
            vessel(`w${index}`, par, diameter, { onMachine: on }),
          );
          const layout = storageLayout(slice({ top: {} }), wares);
          layout.lines.forEach((line, index) => {
            expect(line.onTop + line.inReserve).toBe(wares[index]!.par);
            if (!wares[index]!.onMachine || wares[index]!.diameterMm === null)
              expect(line.onTop).toBe(0);
            expect(
              layout.stacks
                .filter(({ ware }) => ware === line.ware)
                .reduce((sum, { pieces }) => sum + pieces, 0),
            ).toBe(line.onTop);
          });
        },
      ),
      { seed: 20, numRuns: 60 },
    );
  });

  test('espresso cups first, then two rows of the busiest, then the others; glasses for cold drinks last', () => {
    const busy = [
      vessel('large', 15, 108, { handleMm: 34, peakUsesPerHour: 9, warmth: 1.28 }),
      vessel('espresso', 16, 61, { handleMm: 21, peakUsesPerHour: 6, warmth: 2.3 }),
      vessel('medium', 44, 90, { handleMm: 28, peakUsesPerHour: 26, warmth: 1.31 }),
      vessel('tumbler', 20, 77, { peakUsesPerHour: 8, warmth: 0 }),
    ];
    const layout = storageLayout(slice({ top: {} }), busy);
    const onTop = Object.fromEntries(layout.lines.map((line) => [line.ware, line.onTop]));
    expect(onTop).toEqual({ large: 0, espresso: 16, medium: 28, tumbler: 16 });
    expect(layout.lines.filter(({ warmed }) => warmed).map(({ ware }) => ware)).toEqual([
      'espresso',
      'medium',
    ]);
    // With more depth the large cup has its row before a third of the busiest, and cold glasses come last.
    const deep = storageLayout(slice({ top: { depth: '480 mm' } }), busy);
    expect(deep.lines.find(({ ware }) => ware === 'large')!.onTop).toBeGreaterThan(0);
    expect(deep.lines.find(({ ware }) => ware === 'medium')!.onTop).toBe(28);
  });

  test('a number for the top is kept, and told where it does not fit', () => {
    expect(
      storageLayout(slice({ top: {}, onTop: { cup: 10 } }), [vessel('cup', 70, 90)]).lines[0],
    ).toMatchObject({ onTop: 10, inReserve: 60 });
    expect(
      storageLayout(slice({ top: {}, onTop: { cup: 66 } }), [vessel('cup', 70, 90)]).warnings[0],
    ).toMatchObject({ code: 'top-too-small' });
  });

  test('the trigger covers the uses of a trip (Poisson by @stdlib)', () => {
    const trigger = refillTrigger({ peakUsesPerHour: 60 }, 40, 180_000);
    expect(poissonCdf(trigger, 3)).toBeGreaterThanOrEqual(0.95);
    expect(poissonCdf(trigger - 1, 3)).toBeLessThan(0.95);
    expect(refillTrigger({ peakUsesPerHour: 60 }, 4, 180_000)).toBe(4);
  });

  test('what does not fit in reserve, and what would take it', () => {
    const small = { top: {}, reserve: { width: '400 mm', depth: '300 mm', shelves: 1 } };
    const layout = storageLayout(slice(small), [vessel('cup', 120, 90)]);
    // 64 in reserve: 4 × 3 stacks of two a shelf take 24.
    expect(layout.homeless).toEqual([{ ware: 'cup', pieces: 40 }]);
    expect(layout.remedies).toEqual([
      'To hold everything: 3 shelves of 400 × 300 mm (there is 1), or stacks of 6 in the reserve, if the pieces stack safely.',
    ]);
    const roomy = storageLayout(slice({ ...small, reserve: { ...small.reserve, shelves: 3 } }), [
      vessel('cup', 120, 90),
    ]);
    expect(roomy).toMatchObject({ homeless: [], remedies: [] });
    expect(
      storageLayout(slice({ top: {}, reserve: { width: '80 mm', depth: '300 mm', shelves: 1 } }), [
        vessel('cup', 120, 90),
      ]).remedies[0],
    ).toBe('Pieces are wider than shelves of 80 × 300 mm take, however many shelves there are.');
  });

  test('problems: unknown ware, more than there are, no measures, a top without width', () => {
    const problems = storageProblems(
      slice({ top: { width: '0 mm' }, onTop: { mug: 2, cup: 99, bowl: 3 }, trigger: { cup: 71 } }),
      [vessel('cup', 70, 90), vessel('bowl', 9, null)],
    );
    expect(problems.map(({ path, rule }) => `${path.join('.')} ${rule}`)).toEqual([
      'storage.onTop.mug is not a ware of this scenario',
      'storage.onTop.cup pieces are more than the stock of this item (70)',
      'storage.onTop.bowl has no size',
      'storage.trigger.cup pieces are more than the stock of this item (70)',
      'storage.top.width is too little room',
    ]);
  });
});
