import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/scenario/compile.js';
import { scenarioJsonSchema } from '../../src/scenario/scenario.js';
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

  it('differ in kind: waiting for seats, one machine for food ware too, shares that change by the hour', () => {
    const [bar, brunch, hall, bakery] = demos.map((name) =>
      compile(accepted(textOf(name)).scenario),
    );
    expect(bar!.washing).toMatchObject({ otherLoads: null, hands: 'clearers' });
    expect(brunch!.washing.otherLoads).not.toBeNull();
    expect(brunch!.seats).toMatchObject({ whenFull: 'wait', heldUntilCleared: true });
    expect(hall!.washing.machines).toHaveLength(1);
    expect(hall!.washing.otherLoads).not.toBeNull();
    expect(bakery!.shareSteps).not.toBeNull();
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
