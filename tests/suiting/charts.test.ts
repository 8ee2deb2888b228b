import * as vega from 'vega';
import { compile } from 'vega-lite';
import { describe, expect, test } from 'vitest';
import { coolingOfDrinks, coolingOfDrinksTable } from '../../src/questions/suit/cooling.js';
import {
  drinkLabels,
  strengthByDrink,
  strengthByDrinkTable,
} from '../../src/questions/suit/strength.js';
import type { ChartSpec } from '../../src/tell/charts/style.js';
import { formatsFor } from '../../src/tell/format.js';
import { suit } from '../../src/suiting/suit.js';
import { drink, input } from './parts.js';

const look = {
  locale: 'en-IE',
  formats: formatsFor({ locale: 'en-IE', currency: 'EUR', openingMinute: null }),
};
const answer = suit(
  input(
    'papers: { small: { nominal: 8 fl oz } }\ndrinks: { flat-white: { paper: small }, latte: { served: 66 °C } }',
    {
      menu: [
        drink('flat-white', ['medium-cup', 'saucer'], 0.5),
        { ...drink('latte', ['tumbler'], 0.5), name: '</script><b>"Latte"' },
      ],
      dwellMin: 20,
    },
  ),
);

/** Compiles with every warning an error, and draws without a browser. */
async function draw(spec: ChartSpec | null): Promise<string> {
  expect(spec).not.toBeNull();
  const warnings: string[] = [];
  const logger = {
    level: () => logger,
    error: (...m: unknown[]) => (warnings.push(m.join(' ')), logger),
    warn: (...m: unknown[]) => (warnings.push(m.join(' ')), logger),
    info: () => logger,
    debug: () => logger,
  };
  const compiled = compile(spec!, { logger: logger as never });
  expect(warnings).toEqual([]);
  return new vega.View(vega.parse(compiled.spec), { renderer: 'none' }).toSVG();
}

describe('strength', () => {
  test('draws its title, band and marks, names escaped', async () => {
    const svg = await draw(strengthByDrink(answer, look));
    expect(svg).toContain('1 of 1 drinks taste stronger or weaker to take away');
    expect(svg).toContain('flat-white');
    expect(svg).toContain('to take away');
    expect(svg).not.toContain('</script>');
  });

  test('the table has a row a drink and side', () => {
    const { rows } = strengthByDrinkTable(answer, look);
    expect(rows.map((row) => row[1])).toEqual(['in the house', 'to take away', 'in the house']);
    // By hand: 4 g in 190 ml, and in 280 ml (the middle of what 8 oz is said to hold) at 88 %.
    expect(rows.map((row) => row[3])).toEqual(['2.11', '1.62', '1.50']);
    expect(rows[1]![4]).toBe('0.77');
  });

  test('a shot beside long drinks is drawn on a scale of ratios', async () => {
    const both = suit(
      input('drinks: { latte: {}, espresso: { top: nothing } }', {
        menu: [drink('latte', ['tumbler'], 0.5), drink('espresso', ['medium-cup'], 0.5)],
      }),
    );
    const spec = strengthByDrink(both, look);
    expect(JSON.stringify(spec)).toContain('"log"');
    expect(await draw(spec)).toContain('Strength of the drinks in the house');
  });

  test('two drinks of one name are told apart', () => {
    expect(
      drinkLabels([
        { drink: 'a', name: 'Latte' },
        { drink: 'b', name: 'Latte' },
        { drink: 'c', name: 'Tea' },
      ]),
    ).toEqual(['Latte (a)', 'Latte (b)', 'Tea']);
  });
});

describe('cooling', () => {
  test('draws', async () => {
    const svg = await draw(coolingOfDrinks(answer, look));
    expect(svg).toContain('minutes from pouring');
    expect(svg).toContain('warmed vessel');
    expect(svg).toMatch(/A warmed cup keeps the first sip of flat-white \d\u00A0°C hotter/);
  });

  test('the table has every fifth minute and two columns a drink', () => {
    const table = coolingOfDrinksTable(answer);
    expect(table.columns).toHaveLength(5);
    expect(table.rows.map((row) => row[0])).toEqual([0, 5, 10, 15, 20]);
  });
});

test('nothing computed, nothing drawn', () => {
  expect(strengthByDrink({ drinks: [], parity: 0.1 }, look)).toBeNull();
  expect(coolingOfDrinks({ drinks: [], firstSipMin: 2 }, look)).toBeNull();
  expect(coolingOfDrinksTable({ drinks: [], firstSipMin: 2 }).rows).toEqual([]);
});
