/**
 * The cheapest buy against an enumeration that shares no code with it: cartons, price breaks, freight, tax and holding are worked
 * out here anew, from what a supplier's terms mean. Nasty on purpose: cartons far larger than the need, breaks and steps close
 * together, freight by weight, a step that is dearer than the one before, suppliers that lack a ware, needs that differ with lead
 * time, smallest orders in cartons and in money, two rounds in which ware shares a lorry.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buyProblems, type BuyNeed, type BuyTask } from '../../src/ordering/buy.js';
import { chooseBuy } from '../../src/ordering/choose-buy.js';
import { readSupply } from '../../src/ordering/read-supply.js';
import { supplySchema } from '../../src/ordering/schema.js';
import type { Supplier } from '../../src/ordering/supply.js';
import { solver } from './solver.js';

const int = (min: number, max: number) => fc.integer({ min, max });

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

interface Terms {
  readonly quotes: readonly {
    readonly ware: number;
    readonly carton: number;
    readonly grams: number;
    readonly least: number;
    /** How many pieces the supplier's price is of; null: a carton. */
    readonly per: number | null;
    /** From so many cartons: price of a carton, from the last that holds. */
    readonly prices: readonly (readonly [number, number])[];
  }[];
  /** From so many cartons: fixed, per carton, per kilogram. */
  readonly freight: readonly (readonly [number, number, number, number])[];
  readonly free: number | null;
  readonly smallest: number;
  readonly tax: number;
}

const termsArb = (wares: number, cartons: readonly number[]): fc.Arbitrary<Terms> =>
  fc.record({
    quotes: fc
      .tuple(
        ...Array.from({ length: wares }, (_, ware) =>
          fc
            .record({
              sold: fc.boolean(),
              carton: fc.constantFrom(...cartons),
              grams: int(500, 9000),
              least: fc.constantFrom(1, 1, 2),
              per: fc.constantFrom(1, 100, 1000, null),
              price: int(3000, 9000),
              breaks: fc.uniqueArray(int(2, 6), { maxLength: 2 }),
              off: int(3, 25),
            })
            .map(({ sold, price, breaks, off, ...rest }) => {
              // The nearest that can be said in whole cents of so many pieces and makes whole cents a carton.
              const grid = rest.per === null ? 1 : rest.carton / gcd(rest.carton, rest.per);
              const said = (minor: number) => Math.round(minor / grid) * grid;
              return {
                ware,
                sold: sold || ware === 0,
                ...rest,
                prices: [
                  [1, said(price)] as const,
                  ...breaks
                    .toSorted((a, b) => a - b)
                    .map((from, at) => [from, said(price * (1 - off / 100) ** (at + 1))] as const),
                ],
              };
            }),
        ),
      )
      .map((all) => all.filter(({ sold }) => sold)),
    freight: fc
      .record({
        first: fc.tuple(int(0, 5000), int(0, 600), fc.constantFrom(0, 60)),
        later: fc.uniqueArray(
          fc.tuple(int(2, 8), int(0, 7000), int(0, 400), fc.constantFrom(0, 35)),
          {
            maxLength: 2,
            selector: ([from]) => from,
          },
        ),
      })
      .map(({ first, later }) => [
        [1, ...first] as const,
        ...later.toSorted((a, b) => a[0] - b[0]),
      ]),
    free: fc.option(int(7000, 12_000)),
    smallest: fc.constantFrom(0, 0, 6000, 9000),
    tax: fc.constantFrom(0, 0.2, 0.075),
  });

const anySize = termsArb(2, [1, 6, 12, 36]);
const dozens = termsArb(2, [6, 12, 36]);

const rowAt = <T extends readonly [number, ...unknown[]]>(rows: readonly T[], count: number): T =>
  rows.findLast(([from]) => count >= from)!;

/** What one supplier charges for a lorry of so many cartons by ware, tax and handling included; null: not allowed. */
function lorry(terms: Terms, cartons: ReadonlyMap<number, number>, handling: number) {
  let [goods, grams, count] = [0, 0, 0];
  for (const [ware, number] of cartons) {
    if (number === 0) continue;
    const quote = terms.quotes.find((one) => one.ware === ware)!;
    if (number < quote.least) return null;
    goods += number * rowAt(quote.prices, number)[1];
    grams += number * quote.grams;
    count += number;
  }
  if (count === 0) return 0;
  if (goods < terms.smallest) return null;
  const [, fixed, each, kilo] = rowAt(terms.freight, count);
  const free = terms.free !== null && goods >= terms.free;
  const freight = free ? 0 : fixed + each * count + Math.round((grams * kilo) / 1000);
  return goods + freight + Math.round((goods + freight) * terms.tax) + handling;
}

/** A way to get one ware: from whom, cartons a round, cost of holding. */
interface Way {
  readonly from: number;
  readonly cartons: readonly number[];
  readonly held: number;
}

function cheapest(
  suppliers: readonly Terms[],
  ways: readonly (readonly Way[])[],
  rounds: number,
  handling: number,
) {
  let least = Infinity;
  const lorries = new Map<string, number | null>();
  const costOf = (from: number, cartons: ReadonlyMap<number, number>): number | null => {
    const key = `${from}:${[...cartons].join(';')}`;
    if (!lorries.has(key)) lorries.set(key, lorry(suppliers[from]!, cartons, handling));
    return lorries.get(key)!;
  };
  const choose = (chosen: readonly Way[]): void => {
    if (chosen.length < ways.length) {
      for (const way of ways[chosen.length]!) choose([...chosen, way]);
      return;
    }
    let cost = Math.round(chosen.reduce((sum, { held }) => sum + held, 0));
    for (let round = 0; round < rounds; round++)
      for (let from = 0; from < suppliers.length; from++) {
        const sent = chosen.flatMap((way, ware) =>
          way.from === from ? [[ware, way.cartons[round]!] as const] : [],
        );
        const one = costOf(from, new Map(sent));
        if (one === null) return;
        cost += one;
      }
    least = Math.min(least, cost);
  };
  choose([]);
  return least;
}

const euros = (minor: number): string => `${(minor / 100).toFixed(2)} EUR`;

/** The price of a carton as the supplier writes it: of a piece, a hundred, a thousand or a carton. */
const written = (minor: number, carton: number, per: number | null): string =>
  per === null
    ? `${euros(minor)} a carton`
    : `${euros((minor * per) / carton)}${per === 1 ? '' : ` per ${per}`}`;

/** The suppliers of a file with these terms. */
function suppliersOf(all: readonly Terms[]): readonly Supplier[] {
  const suppliers = all.map((terms, at) => [
    `s${at}`,
    {
      leadTime: '7 days',
      minimumOrder: euros(terms.smallest),
      tax: terms.tax,
      freight: {
        ...(terms.free === null ? {} : { freeFrom: euros(terms.free) }),
        steps: terms.freight.map(([from, fixed, perCarton, perKg]) => ({
          from,
          fixed: euros(fixed),
          perCarton: euros(perCarton),
          perKg: euros(perKg),
        })),
      },
      quotes: Object.fromEntries(
        terms.quotes.map(({ ware, carton, grams, least, per, prices: [first, ...breaks] }) => [
          `w${ware}`,
          {
            price: written(first![1], carton, per),
            carton,
            minimumCartons: least,
            cartonMass: `${grams} g`,
            breaks: breaks.map(([from, minor]) => ({
              from: from * carton,
              price: written(minor, carton, per),
            })),
          },
        ]),
      ),
    },
  ]);
  const ware = [0, 1].map((id) => ({ id: `w${id}`, massG: null }));
  const outcome = readSupply(supplySchema.parse({ suppliers: Object.fromEntries(suppliers) }), {
    currency: 'EUR',
    staffHourMinor: 2200,
    ware,
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value.suppliers;
}

const taskOf = (
  suppliers: readonly Terms[],
  needs: readonly BuyNeed[],
  rounds: number,
  handlingMinor: number,
): BuyTask => ({ suppliers: suppliersOf(suppliers), needs, rounds, handlingMinor });

async function matches(task: BuyTask, least: number): Promise<void> {
  const chosen = await chooseBuy(task, solver);
  if (!chosen.ok) throw new Error('every ware is sold');
  expect(chosen.value.proved).toBe(true);
  expect(buyProblems(task, chosen.value.lines)).toEqual([]);
  // The programme rounds no tax, no holding and no freight by weight: a cent a lorry and one for the holding.
  const cents = 2 * task.suppliers.length * task.rounds + 1;
  expect(Math.abs(chosen.value.totalMinor - least)).toBeLessThanOrEqual(cents);
  // What it says it costs is what the terms say, and a bound, found with no effort at all, is below it.
  const bound = await chooseBuy(task, solver, 0, { left: 0 });
  if (!bound.ok) throw new Error('every ware is sold');
  expect(bound.value.leastMinor!).toBeLessThanOrEqual(least + cents);
  // Asked only whether anything beats a cost: it finds the cheapest where that does, and otherwise says that nothing can.
  for (const share of [0.97, 1.03]) {
    const beat = least * share;
    const against = await chooseBuy(task, solver, 0, { left: 0, proof: Infinity }, beat);
    if (!against.ok) throw new Error('every ware is sold');
    const { totalMinor, leastMinor } = against.value;
    expect(leastMinor!).toBeLessThanOrEqual(least + cents);
    expect(leastMinor!).toBeGreaterThanOrEqual(Math.min(beat, least) - cents - 1);
    if (share > 1) expect(Math.abs(totalMinor - least)).toBeLessThanOrEqual(cents);
  }
}

/** Cartons past which none of the terms above can change any more. */
const MOST = 12;
const upTo = (most: number): number[] => Array.from({ length: most + 1 }, (_, count) => count);

describe('the cheapest buy, by another hand', () => {
  test('one order from three suppliers', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.tuple(anySize, anySize, anySize),
        fc.tuple(int(1, 40), int(1, 40)),
        fc.tuple(int(0, 9), int(0, 9)),
        int(0, 1500),
        async (suppliers, wanted, later, handling) => {
          const needOf = (ware: number, from: number): number =>
            wanted[ware]! + from * later[ware]!;
          const sellers = (ware: number): number[] =>
            suppliers.flatMap(({ quotes }, from) =>
              quotes.some((one) => one.ware === ware) ? [from] : [],
            );
          fc.pre(sellers(1).length > 0);
          const most = (ware: number, from: number): number =>
            Math.max(
              MOST,
              Math.ceil(
                needOf(ware, from) /
                  suppliers[from]!.quotes.find((one) => one.ware === ware)!.carton,
              ),
            );
          const ways = [0, 1].map((ware) =>
            sellers(ware).flatMap((from) =>
              upTo(most(ware, from))
                .filter(
                  (count) =>
                    count * suppliers[from]!.quotes.find((one) => one.ware === ware)!.carton >=
                    needOf(ware, from),
                )
                .map((count): Way => ({ from, cartons: [count], held: 0 })),
            ),
          );
          const needs = [0, 1].map((ware) => ({
            ware: `w${ware}`,
            options: sellers(ware).map((from) => ({
              supplier: `s${from}`,
              orderRounds: [0],
              eachTime: false,
              pieces: [needOf(ware, from)],
              spares: null,
            })),
          }));
          await matches(
            taskOf(suppliers, needs, 1, handling),
            cheapest(suppliers, ways, 1, handling),
          );
        },
      ),
      { seed: 29, numRuns: 25 },
    );
  });

  test(
    'two rounds, two suppliers, ware that shares lorries or comes once',
    { timeout: 60_000 },
    async () => {
      await fc.assert(
        fc.asyncProperty(
          fc.tuple(dozens, dozens),
          fc.tuple(int(1, 14), int(1, 14)),
          fc.tuple(int(0, 9), int(0, 9)),
          int(0, 900),
          int(0, 200),
          async (suppliers, first, lost, handling, pieceMinorARound) => {
            fc.pre(suppliers.some(({ quotes }) => quotes.some(({ ware }) => ware === 1)));
            const optionsOf = (ware: number) =>
              suppliers.flatMap(({ quotes }, from) => {
                const quote = quotes.find((one) => one.ware === ware);
                if (quote === undefined) return [];
                const spares = { start: -first[ware]!, lostARound: lost[ware]!, pieceMinorARound };
                const upToEnd = first[ware]! + lost[ware]! + 1;
                return [
                  {
                    from,
                    carton: quote.carton,
                    often: true,
                    pieces: [first[ware]!, upToEnd],
                    spares,
                  },
                  { from, carton: quote.carton, often: false, pieces: [upToEnd, upToEnd], spares },
                ];
              });
            const ways = [0, 1].map((ware) =>
              optionsOf(ware).flatMap(({ from, carton, often, pieces, spares }) => {
                const most = Math.max(8, Math.ceil(pieces[1]! / carton));
                return upTo(most).flatMap((now) =>
                  (often ? upTo(most) : [0]).flatMap((then): Way[] => {
                    const enough =
                      now * carton >= pieces[0]! && (now + then) * carton >= pieces[1]!;
                    if (!enough || (often && (now === 0 || then === 0))) return [];
                    const spare = [now, now + then].map(
                      (bought, round) =>
                        bought * carton + spares.start - (round + 0.5) * spares.lostARound,
                    );
                    return [
                      {
                        from,
                        cartons: [now, then],
                        held: (spare[0]! + spare[1]!) * pieceMinorARound,
                      },
                    ];
                  }),
                );
              }),
            );
            const needs = [0, 1].map((ware) => ({
              ware: `w${ware}`,
              options: optionsOf(ware).map(({ from, often, pieces, spares }) => ({
                supplier: `s${from}`,
                orderRounds: often ? [0, 1] : [0],
                eachTime: often,
                pieces,
                spares,
              })),
            }));
            await matches(
              taskOf(suppliers, needs, 2, handling),
              cheapest(suppliers, ways, 2, handling),
            );
          },
        ),
        { seed: 29, numRuns: 12 },
      );
    },
  );
});
