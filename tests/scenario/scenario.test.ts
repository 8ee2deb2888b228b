import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/scenario/compile.js';
import { scenarioJsonSchema } from '../../src/scenario/scenario.js';
import { starter, starterDrinks } from '../../src/scenario/starter.js';
import { accepted, changed, problemsOf, valid } from './a-scenario.js';

const folder = new URL('../../scenarios/', import.meta.url);
const demos = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .toSorted();
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

describe('the demo cafés', () => {
  it('are there, the commuter bar first', () =>
    expect(demos.slice(0, 3)).toEqual([
      '1-commuter-bar.yaml',
      '2-brunch-room.yaml',
      '3-great-hall.yaml',
    ]));

  it.each(demos)('%s is valid, without warnings, and short enough to read', (name) => {
    const { scenario, warnings, inputs } = accepted(textOf(name));
    expect(warnings).toEqual([]);
    expect(textOf(name).split('\n').length).toBeLessThanOrEqual(200);
    expect(inputs.some(({ basis, range }) => basis === 'measured' && range !== null)).toBe(true);
    expect(compile(scenario).menu.length).toBeGreaterThanOrEqual(3);
  });

  it('differ in kind: food on the machine and waiting for seats, two machines', () => {
    const [bar, brunch, hall] = demos.map((name) => compile(accepted(textOf(name)).scenario));
    expect(bar!.washing).toMatchObject({ otherLoads: null, hands: 'clearers' });
    expect(brunch!.washing.otherLoads).not.toBeNull();
    expect(brunch!.seats).toMatchObject({ whenFull: 'wait', heldUntilCleared: true });
    expect(hall!.washing.machines).toHaveLength(2);
    // One saucer under two sizes of cup.
    expect(
      new Set(
        bar!.menu.filter(({ setting }) => setting.includes(2)).map(({ setting }) => setting[0]),
      ).size,
    ).toBe(2);
  });
});

describe('the JSON Schema', () => {
  const schema = scenarioJsonSchema();
  // A validator of the standard that shares nothing with the library which wrote the schema, as an editor's would.
  const validate = new Ajv({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(
    schema,
  );
  const takes = (text: string): boolean => validate(parse(text));

  it('is draft 7 and asks only for what no default fills', () => {
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
    expect(schema.required).toEqual([
      'name',
      'currency',
      'staffHour',
      'hours',
      'arrivals',
      'seats',
      'menu',
      'ware',
      'washing',
    ]);
    expect(JSON.stringify(schema).includes('"filled"')).toBe(false);
    const seats = schema.properties!['seats'] as { required: string[] };
    expect(seats.required).toEqual(['count']);
  });

  it.each(demos)('takes %s', (name) => expect(takes(textOf(name))).toBe(true));

  it('takes marked values and refuses what the reader refuses', () => {
    expect(takes(valid)).toBe(true);
    expect(
      takes(
        changed(
          'staysIn: 40 %',
          'staysIn: { value: 40 %, basis: measured, range: [30 %, 45 %], source: "a tally" }',
        ),
      ),
    ).toBe(true);
    for (const [from, to] of [
      ['making: 40 s', 'making: 40'],
      ['staysIn: 40 %', 'staysIn: { value: 40 %, basis: guessed }'],
      ['count: 20', 'count: -1'],
      ['seats: {', 'seats: { sofas: 3,'],
      ['drying: 3 min', 'drying: -3 min'],
      ['price: 4 EUR', 'price: 4'],
    ] as const) {
      expect(takes(changed(from, to)), to).toBe(false);
      expect(problemsOf(changed(from, to)).length, to).toBeGreaterThan(0);
    }
  });
});

describe('a starter', () => {
  const answers = {
    name: 'Corner "House": #1',
    seats: 44,
    guestsPeakHour: 90,
    from: '07:30',
    to: '10:30',
    staysIn: 0.45,
    menu: starterDrinks,
    currency: 'EUR',
    staffHour: '22.50',
  };

  it('is valid with every drink, and says what was answered', () => {
    const { scenario, warnings, raw } = accepted(starter(answers));
    expect(warnings).toEqual([]);
    expect(scenario).toMatchObject({
      name: answers.name,
      seats: { count: 44 },
      guests: { staysIn: 0.45 },
      staffHour: { currency: 'EUR', minor: 2250 },
      hours: { from: 27_000_000, to: 37_800_000 },
    });
    expect(Object.keys(scenario.menu)).toEqual(starterDrinks);
    expect(raw).toHaveProperty('arrivals.peak.guests', '90 / h');
  });

  it.each(starterDrinks)('is valid with %s alone', (drink) => {
    const { scenario, warnings } = accepted(starter({ ...answers, menu: [drink] }));
    expect(warnings).toEqual([]);
    expect(scenario.menu[drink]?.share).toBe(1);
  });

  it('is valid for a late and long opening, and another currency', () => {
    expect(
      accepted(
        starter({ ...answers, from: '09:00', to: '17:00', currency: 'JPY', staffHour: '2400' }),
      ).scenario.staffHour,
    ).toEqual({ currency: 'JPY', minor: 2400 });
  });

  it('passes on a wrong answer to be told by the reader, and refuses an unknown drink', () => {
    expect(problemsOf(starter({ ...answers, to: '07:00' }))[0]).toMatch(
      /hours\.to: "07:00" is closing before opening/,
    );
    expect(() => starter({ ...answers, menu: ['cordial'] })).toThrow(RangeError);
  });
});
