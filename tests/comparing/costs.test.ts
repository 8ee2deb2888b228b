import { describe, expect, it } from 'vitest';
import { costsOf, type CostFrame, type CostInput } from '../../src/comparing/costs.js';

const frame: CostFrame = {
  daysAYear: 100,
  rushShare: 0.5,
  horizonYears: 4,
  discount: 0,
  waterPerM3: 500,
  energyPerKWh: 30,
  detergentPerKg: 400,
  rinseAidPerL: 600,
  staffHour: 2000,
  staffCounted: 0.25,
  serviceShare: 0.05,
};
const input: CostInput = {
  machines: [
    {
      price: 400_000,
      installation: 80_000,
      lifeYears: 8,
      waterMl: 3000,
      energyKWh: 0.4,
      detergentG: 5,
      rinseAidMl: 1,
      idleKW: 0.5,
      owned: false,
    },
  ],
  ware: [
    {
      pieces: 50,
      owned: 0,
      unitCost: 400,
      usesADay: 200,
      brokenPerThousandUses: 0.5,
      lostPerYear: 0.1,
    },
  ],
  racks: 6000,
  freight: 1500,
  once: 700,
  aYear: 900,
  day: { loads: 20, staffMinutes: 60, openHours: 4, machineBusy: 0.25 },
};

/** Worked by hand; 100 days a year, of whose uses the hours have half: 200 times what they take. */
describe('what an alternative costs', () => {
  const { now, nowTotal, year, yearTotal, total, machinesPresent } = costsOf(frame, input);

  it('now', () => {
    expect(now).toEqual({
      ware: 20_000,
      racks: 6000,
      machines: 400_000,
      installation: 80_000,
      freight: 1500,
      other: 700,
    });
    expect(nowTotal).toBe(508_200);
  });

  it('a year', () => {
    // 4000 loads: 12 m³, 1600 kWh and 20 kg, 4 l; idle for three of four hours, 200 times: 600 h of half a kilowatt, 300 kWh.
    const byHand = {
      water: 6000,
      energy: 1900 * 30,
      chemicals: 8000 + 2400,
      // A twentieth of the price of the machine; a quarter of the hours of staff.
      service: 20_000,
      staff: 50 * 2000,
      breakage: 20 * 400,
      lost: 5 * 400,
      other: 900,
    };
    for (const [part, minor] of Object.entries(byHand))
      expect(year[part as keyof typeof byHand], part).toBeCloseTo(minor, 6);
    expect(yearTotal).toBeCloseTo(
      Object.values(byHand).reduce((sum, part) => sum + part, 0),
      6,
    );
  });

  it('over the horizon, a machine by its share of its life', () => {
    // Without interest four years take half of a machine that lasts eight, its installation too.
    expect(machinesPresent).toBeCloseTo(240_000, 6);
    expect(total).toBeCloseTo(28_200 + 240_000 + 4 * yearTotal, 6);
  });

  it('all staff time beside it, whatever is counted', () => {
    const { staffAYear } = costsOf({ ...frame, staffCounted: 0 }, input);
    expect(staffAYear).toBeCloseTo(200 * 2000, 6);
    expect(costsOf({ ...frame, staffCounted: 0 }, input).year.staff).toBe(0);
  });

  it('nothing for what is there, but a machine again once its life is over', () => {
    const owned = costsOf(
      { ...frame, horizonYears: 12 },
      {
        ...input,
        machines: input.machines.map((one) => ({ ...one, owned: true })),
        ware: input.ware.map((one) => ({ ...one, owned: 30 })),
      },
    );
    expect([owned.now.ware, owned.now.machines, owned.now.installation]).toEqual([8000, 0, 0]);
    // Eight years paid for, four of the next eight to pay.
    expect(owned.machinesPresent).toBeCloseTo(240_000, 6);
    const plenty = costsOf(frame, { ...input, ware: [{ ...input.ware[0]!, owned: 80 }] });
    expect(plenty.now.ware).toBe(0);
  });
});
