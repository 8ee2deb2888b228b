/**
 * Fields that the code names outside the schema, as text ('seats.count', `ware.${id}.rim`) or as steps
 * (['menu', drink, 'share']), are fields of the schema: a name that is misspelt, or left behind when a field is renamed, fails here.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type * as z from 'zod';
import { scenarioSchema } from '../../src/scenario/scenario.js';
import { defOf } from '../../src/scenario/schema-walk.js';

/** Look like paths and are none: file names, columns of tables, the way words begin. */
const OTHERS = [
  'arrivals.s', // arrivals.slots or arrivals.steps
  'calendar.csv',
  "'guests', 'served', 'left'",
  "'ware', 'counted', 'broken', 'retired', 'delivered'",
  "'ware', 'machines', 'staff', 'running', 'losses'",
  "'ware', 'racks', 'machines', 'installation', 'freight', 'other'",
];

/** Every place of the schema, `*` for a name; what stands in a list stands where the list does. */
function placesOf(schema: z.core.$ZodType, path = '', found = new Set<string>()): Set<string> {
  found.add(path);
  const { innerType, in: input, options, shape, valueType, element } = defOf(schema);
  const step = (key: string): string => (path === '' ? key : `${path}.${key}`);
  for (const one of [innerType, input, element, ...(options ?? [])])
    if (one) placesOf(one, path, found);
  for (const [key, one] of Object.entries(shape ?? {})) placesOf(one, step(key), found);
  if (valueType) placesOf(valueType, step('*'), found);
  return found;
}
const places = [...placesOf(scenarioSchema)];
const sections = [
  ...new Set(places.filter((place) => place.includes('.')).map((place) => place.split('.')[0]!)),
];

/** A step that is worked out when the code runs: any name, field or place in a list. */
const ANY = null;

function isPlace(steps: readonly (string | typeof ANY)[]): boolean {
  let at = [''];
  for (const step of steps) {
    const below = at.flatMap((owner) =>
      places.filter((place) =>
        owner === ''
          ? place !== '' && !place.includes('.')
          : place.startsWith(`${owner}.`) && !place.slice(owner.length + 1).includes('.'),
      ),
    );
    if (step === ANY) at = [...at, ...below];
    else
      at = below.filter(
        (place) => place === step || place.endsWith(`.${step}`) || place.endsWith('.*'),
      );
  }
  return at.length > 0;
}

const first = sections.join('|');
const AS_TEXT = new RegExp(
  `(?<![\\w$])(['\`])((?:${first})(?:\\.(?:\\$\\{[^}]*\\}|[\\w*-]+)|\\[(?:\\$\\{[^}]*\\}|\\d*)\\])+)\\.?\\1`,
  'g',
);
const AS_STEPS = new RegExp(`\\[\\s*('(?:${first})'\\s*,[^\\[\\]\`]*?),?\\s*\\]`, 'g');

/** Steps of `a.b[0].${c}`. */
const stepsOfText = (text: string): (string | null)[] =>
  text
    .replace(/\[[^\]]*\]/g, '')
    .split(/\.(?![^{]*\})/)
    .map((step) => (step.includes('${') ? ANY : step));

/** Steps of 'a', b, 'c'; null where these are plainly no steps. */
function stepsOfList(list: string): (string | null)[] | null {
  const items = list.split(/\s*,\s*/);
  if (items.some((item) => !/^('[\w-]+'|[\w.$()]+)$/.test(item))) return null;
  const steps = items
    .filter((item) => !/^\d+$/.test(item))
    .map((item) => (item.startsWith("'") ? item.slice(1, -1) : ANY));
  // A list of sections, not a way into one.
  return steps.length > 1 && steps.slice(1).every((one) => one !== ANY && places.includes(one))
    ? null
    : steps;
}

test('every path that the code names is a place of the schema', () => {
  const wrong: string[] = [];
  const others = new Set<string>();
  let seen = 0;
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' });
  for (const file of files.filter((name) => /\.tsx?$/.test(name))) {
    const code = readFileSync(`src/${file}`, 'utf8');
    const named = [
      ...[...code.matchAll(AS_TEXT)].map(([, , text]) => ({
        said: text!,
        steps: stepsOfText(text!),
      })),
      ...[...code.matchAll(AS_STEPS)].map(([, list]) => ({
        said: list!.replace(/\s+/g, ' '),
        steps: stepsOfList(list!),
      })),
    ];
    for (const { said, steps } of named) {
      if (steps === null) continue;
      seen += 1;
      if (isPlace(steps)) continue;
      if (OTHERS.includes(said)) others.add(said);
      else wrong.push(`${file}: ${said}`);
    }
  }
  expect(wrong, 'not in the schema').toEqual([]);
  expect([...others].toSorted(), 'no longer said').toEqual(OTHERS.toSorted());
  expect(seen).toBeGreaterThan(250);
});
