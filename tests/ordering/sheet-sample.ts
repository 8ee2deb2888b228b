/** A small café's order, from a supply slice as a file would hold it; all names are invented. */
import { orderSheet, type SheetInput } from '../../src/ordering/make-sheet.js';
import type { OrderedWare } from '../../src/ordering/sheet-line.js';
import type { OrderSheet } from '../../src/ordering/order-sheet.js';
import { readSupply } from '../../src/ordering/read-supply.js';
import type { SupplyModel } from '../../src/ordering/supply-model.js';
import { supplySchema } from '../../src/ordering/schema.js';
import { solver } from './solver.js';

export const sampleSlice = {
  horizon: '730 days',
  review: '28 days',
  confidence: '95 %',
  tax: '23 %',
  handling: '0.5 staff hours',
  onHand: { saucer: 20 },
  suppliers: {
    quay: {
      name: 'Quay Tableware',
      leadTime: { gamma: { mean: '9 days', sd: '3 days' } },
      freight: { fixed: '14 EUR', perCarton: '5 EUR', freeFrom: '450 EUR' },
      quotes: {
        cup: {
          price: '4.20 EUR',
          carton: 12,
          cartonMass: '4 kg',
          breaks: [{ from: 72, price: '3.90 EUR' }],
        },
        saucer: { price: '2.10 EUR', carton: 24, cartonMass: '6 kg' },
      },
    },
    mill: {
      name: '=Mill, Lane & Co',
      repeat: 'none',
      leadTime: '6 days',
      minimumOrder: '60 EUR',
      freight: { fixed: '9 EUR' },
      quotes: {
        cup: { price: '3.10 EUR', carton: 24, cartonMass: '8 kg' },
        glass: { price: '1.40 EUR', carton: 48, cartonMass: '11 kg' },
      },
    },
  },
};

const losses = { perThousandUses: 0.3, walkOffPerYear: 0, retirementPerYear: 0.02 };
export const sampleWare: readonly OrderedWare[] = [
  { id: 'cup', name: 'Medium cup', colour: 'white', shape: 'cup', par: 62, usesADay: 240, losses },
  {
    id: 'saucer',
    name: '+Saucer "plain"',
    colour: 'white',
    shape: 'saucer',
    par: 70,
    usesADay: 300,
    losses: { ...losses, perThousandUses: 0.15 },
  },
  {
    id: 'glass',
    name: 'Tumbler',
    colour: null,
    shape: 'glass',
    par: 30,
    usesADay: 90,
    losses: { ...losses, perThousandUses: 0.5 },
  },
  {
    id: 'teaspoon',
    name: 'Teaspoon',
    colour: null,
    shape: 'spoon',
    par: 80,
    usesADay: 300,
    losses: { perThousandUses: 0, walkOffPerYear: 0.45, retirementPerYear: 0 },
  },
];

export function sampleSupply(slice: object = sampleSlice): SupplyModel {
  const outcome = readSupply(supplySchema.parse(slice), {
    currency: 'EUR',
    staffHourMinor: 2200,
    ware: sampleWare.map(({ id }) => ({ id, massG: 300 })),
  });
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  return outcome.value;
}

export const sampleInput = (more: Partial<SheetInput> = {}): SheetInput => ({
  title: 'Tern & Tide',
  date: '2026-03-02',
  currency: 'EUR',
  locale: 'en-IE',
  supply: sampleSupply(),
  ware: sampleWare,
  takeaway: [
    {
      id: 'paper',
      name: '@Paper cup',
      kind: 'cup',
      aWeek: 503.5,
      asFallBackAWeek: 12.25,
      confidence: 0.95,
      forAWeek: 548,
      sleeve: 50,
      sleevesAWeek: 11,
      minorAWeek: 4400,
    },
  ],
  onMachine: true,
  ...more,
});

export async function sampleSheet(more: Partial<SheetInput> = {}): Promise<OrderSheet> {
  const outcome = await orderSheet(sampleInput(more), solver);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join('; '));
  return outcome.value;
}
