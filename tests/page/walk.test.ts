/** The picture of a walk: who sits where, which moment it is, and that the words tell what the columns hold. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { disc, layoutPath, stacksPath } from '../../src/page/walk/marks.js';
import { indexAt, momentAt, piecesAt } from '../../src/page/walk/moment.js';
import { seatPlan } from '../../src/page/walk/seat-plan.js';
import { ALL, mostAt, stockOf, stopCounts, stuckAt, tell } from '../../src/page/walk/stops.js';
import { coursePath } from '../../src/page/walk/where.js';
import { formatsFor } from '../../src/tell/format.js';
import { english } from '../../src/tell/words.js';
import { compile } from '../../src/scenario/compile.js';
import { walkDay, type DayWalk } from '../../src/questions/walk/day.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { walkLayouts } from '../../src/questions/walk/layouts.js';

function opened(name: string) {
  const read = readScenario(readFileSync(`scenarios/${name}`, 'utf8'), name, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error(name);
  const model = compile(read.scenario, piecesPerRackOf);
  const walk = (stock: readonly number[] | null): DayWalk =>
    walkDay({ model, seed: read.scenario.seed, day: 0, stock, listed: null });
  return { scenario: read.scenario, model, walk };
}

const demo = opened('1-commuter-bar.yaml');
const houses = [demo, opened('2-brunch-room.yaml'), opened('4-bakery-corner.yaml')];
const everyMoment = (walk: DayWalk): number[] => Array.from(walk.times, (_, index) => index);

describe('the stops on the way round', () => {
  it('hold every piece, of one ware and of all', () => {
    for (const { walk } of houses) {
      const day = walk(null);
      for (const index of everyMoment(day)) {
        const moment = momentAt(day, index);
        for (const follow of [ALL, ...day.wares.keys()]) {
          const counts = Object.values(stopCounts(day, moment, follow));
          expect(counts.every((pieces) => pieces >= 0)).toBe(true);
          expect(counts.reduce((sum, pieces) => sum + pieces, 0)).toBe(stockOf(day, follow));
        }
      }
    }
  });

  it('name the one that holds most on the way back, and call ware stuck only while it is scarce', () => {
    const counts = {
      shelf: 10,
      making: 20,
      guests: 30,
      dirty: 1,
      carried: 2,
      bench: 7,
      machine: 0,
      drying: 7,
      polishing: 0,
    };
    expect(mostAt(counts)).toBe('bench');
    expect([stuckAt(counts, 40), stuckAt(counts, 39)]).toEqual(['bench', null]);
    expect(mostAt({ ...counts, dirty: 0, carried: 0, bench: 0, drying: 0 })).toBeNull();
  });
});

describe('the seats', () => {
  it('are never taken by two parties at once, are as many as the house has, and hold whole parties', () => {
    for (const { walk } of houses) {
      const day = walk(null);
      for (const columns of [4, 7, 13]) {
        const plan = seatPlan(day, columns);
        expect(plan.seats).toBe(day.seats);
        day.parties.forEach(({ size }, n) => expect(new Set(plan.of[n]).size).toBe(size));
        for (const index of everyMoment(day)) {
          const taken = day.parties.flatMap(({ from, left }, n) =>
            from <= index && index < left ? plan.of[n]! : [],
          );
          expect(new Set(taken).size).toBe(taken.length);
        }
      }
    }
  });
});

describe('the clock', () => {
  it('finds the last moment at or before a time', () => {
    const day = { times: Float64Array.of(0, 10, 25) };
    expect([-5, 0, 9, 10, 24, 25, 1e9].map((ms) => indexAt(day, ms))).toEqual([
      0, 0, 0, 1, 1, 2, 2,
    ]);
  });
});

describe('the line in words', () => {
  const formats = formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: 7 * 60 });
  const said = (day: DayWalk, index: number, ware: number): string =>
    tell(day, momentAt(day, index), ware, (one) => day.wares[one]!, formats);

  it('tells of the bare shelf at the tightest moment, and of a shortage from when it happens', () => {
    const full = demo.walk(null);
    expect(said(full, full.tightestIndex, full.scarcest)).toContain(
      english.walk.shelfBare(full.wares[full.scarcest]!, formats.count(full.stock[full.scarcest]!)),
    );
    const fewer = demo.walk(full.stock.map((pieces) => Math.ceil(pieces * 0.8)));
    const first = fewer.firstShortIndex;
    const lacking = english.walk.shortNow(fewer.wares[fewer.shortages[0]!.ware]!);
    expect(said(fewer, first, 0)).toContain(lacking);
    expect(said(fewer, first - 1, 0)).not.toContain(lacking);
    expect(said(fewer, first - 1, 0)).not.toContain('short so far');
  });
});

describe('the drawing', () => {
  it('has true layouts with a place for every piece of a full rack, all inside it', () => {
    let drawn = 0;
    for (const { scenario, model } of houses) {
      for (const [id, { pieces, outline, insideMm }] of Object.entries(walkLayouts(scenario))) {
        if (pieces.length === 0) continue;
        drawn += 1;
        expect(pieces.length, id).toBe(model.ware.find((ware) => ware.id === id)!.perRack);
        for (const { x, y, angleDeg } of pieces) {
          const [c, s] = [
            Math.cos((angleDeg * Math.PI) / 180),
            Math.sin((angleDeg * Math.PI) / 180),
          ];
          for (let n = 0; n < outline.length; n += 2) {
            const [px, py] = [
              x + outline[n]! * c - outline[n + 1]! * s,
              y + outline[n]! * s + outline[n + 1]! * c,
            ];
            // Rounded to tenths of a millimetre.
            expect(Math.min(px, py, insideMm.x - px, insideMm.y - py), id).toBeGreaterThan(-0.3);
          }
        }
      }
    }
    expect(drawn).toBeGreaterThan(5);
  });

  it('draws one mark a piece, and round discs', () => {
    const layout = Object.values(walkLayouts(demo.scenario)).find(
      ({ pieces }) => pieces.length > 3,
    )!;
    expect(layoutPath(layout, 0, 3).split('M').length - 1).toBe(3);
    expect(layoutPath(layout, 0, 0)).toBe('');
    expect(stacksPath(5, 17, 4).split('M').length - 1).toBe(12);
    const [, radius, across] = /a([\d.]+) .* 0 1 0 ([\d.]+) 0a/.exec(disc(10, 10, 6.96))!;
    expect(Number(across)).toBeCloseTo(2 * Number(radius), 9);
  });

  it('draws the shelf as low as it gets', () => {
    const day = demo.walk(null);
    const lows = day.wares.map((_, ware) =>
      Math.min(...everyMoment(day).map((index) => piecesAt(day, index, ware, 0))),
    );
    expect(lows).toEqual(day.wares.map(() => 0));
    for (const ware of day.wares.keys())
      if (day.stock[ware]! > 0) expect(coursePath(day, ware)).toMatch(/V54(?:H|$)/);
  });
});
