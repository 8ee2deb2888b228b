/** What only a chain has, held against sums worked out another way. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atMost, sumOf } from '../../../src/ordering/counts-of-pieces.js';
import { lossDistribution, type LossRates } from '../../../src/ordering/losses.js';
import { together } from '../../../src/questions/sites/chain.js';
import { lineThrough } from '../../../src/questions/sites/site-guide.js';
import { sparesOf } from '../../../src/questions/sites/spares.js';
import { wareListOf } from '../../../src/questions/sites/ware-list.js';
import type { SupplyModel } from '../../../src/ordering/supply-model.js';
import type { SizedSite } from '../../../src/questions/sites/chain.js';

const losses = {
  perThousandUses: 0.4,
  walkOffPerYear: 0.2,
  retirementPerYear: 0.05,
} as const;

describe('spares in one place', () => {
  it('lose as the sites do together, exactly: the convolution of their losses', () => {
    for (const dispersion of [1, 1.7]) {
      const of = (
        par: number,
        usesADay: number,
      ): { par: number; have: number; rates: LossRates } => ({
        par,
        have: 0,
        rates: { ...losses, dispersion, usesADay },
      });
      const sites = [of(40, 90), of(75, 160), of(23, 31)];
      const each = sites.map(({ par, rates }) => lossDistribution(rates, par, 35));
      const convolved = each.reduce((sum, one) => sumOf(sum, one));
      const { par, rates } = together(sites);
      const pooled = lossDistribution(rates, par, 35);
      for (let lost = 0; lost < 40; lost += 1)
        expect(atMost(pooled, lost)).toBeCloseTo(atMost(convolved, lost), 10);
    }
  });

  it('are no more than at the sites, and the same for one site', () => {
    const site = (id: string, pieces: number): SizedSite =>
      ({
        site: { line: { id }, opened: { scenario: { ware: { cup: {} } } } },
        row: { pieces: { cup: pieces }, have: {}, uses: { cup: 3 * pieces } },
      }) as unknown as SizedSite;
    const supply = {
      suppliers: [],
      confidence: 0.95,
      reviewDays: 28,
      rushShare: 0.6,
      openDaysAWeek: 6,
    } as unknown as SupplyModel;
    // Losses of ware without a class are given by the scenario.
    const scenario = { ware: { cup: {} }, supply: { losses: { cup: { perThousandUses: 0.5 } } } };
    const with_ = (sites: SizedSite[]): SizedSite[] =>
      sites.map((one) => ({ ...one, site: { ...one.site, opened: { scenario } } }) as never);
    const line = (sites: SizedSite[]) =>
      sparesOf(with_(sites), [{ id: 'cup', name: 'Cup' }], supply).lines[0]!;
    const one = line([site('a', 50)]);
    expect(one.central).toBe(one.each);
    expect(one.all).toBe(one.each);
    const many = line(['a', 'b', 'c', 'd', 'e', 'f'].map((id, at) => site(id, 30 + 10 * at)));
    expect(many.central).toBeGreaterThan(0);
    expect(many.central).toBeLessThan(many.each);
    expect(many.each).toBeLessThan(many.all);
  });
});

describe('the guide from the sites', () => {
  it('foretells each site as the line through all others does', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 0, max: 300 })), {
          minLength: 6,
          maxLength: 12,
        }),
        (points) => {
          const x = points.map(([one], at) => one + at / 100);
          const y = points.map(([, one]) => one);
          const { leftOut } = lineThrough(x, y);
          leftOut.forEach((foretold, at) => {
            const drop = (values: readonly number[]): number[] => values.filter((_, i) => i !== at);
            const { fixed, slope } = lineThrough(drop(x), drop(y));
            expect(foretold).toBeCloseTo(fixed + slope * x[at]!, 6);
          });
        },
      ),
      { seed: 2, numRuns: 40 },
    );
  });
});

describe('one ware list', () => {
  it('keeps the fewest kinds with which every drink has a whole setting', () => {
    const site = (menu: Record<string, { setting: string[]; fallBacks?: string[][] }>): SizedSite =>
      ({
        site: { opened: { scenario: { menu } } },
        row: { pieces: { small: 10, large: 20, saucer: 30, glass: 5 } },
      }) as unknown as SizedSite;
    const ware = ['small', 'large', 'saucer', 'glass', 'unused'].map((id) => ({ id, name: id }));
    const sites = [
      site({
        espresso: { setting: ['small', 'saucer'], fallBacks: [['large', 'saucer']] },
        latte: { setting: ['large', 'saucer'], fallBacks: [[]] },
      }),
      site({ iced: { setting: ['glass'] } }),
    ];
    expect(wareListOf(sites, ware).fewest).toEqual({
      ware: ['large', 'saucer', 'glass'],
      without: ['small'],
      changed: ['espresso'],
    });
    // Where one site has no fall-back for it, the kind stays.
    const bound = [...sites, site({ espresso: { setting: ['small', 'saucer'] } })];
    expect(wareListOf(bound, ware).fewest!.without).toEqual([]);
  });
});
