/** What editors show beside a field, and that validators see the schema they always saw. */
import { expect, test } from 'vitest';
import { describedSchema } from '../../src/cli/described-schema.js';
import { scenarioJsonSchema } from '../../src/scenario/scenario.js';

type Tree = Readonly<Record<string, unknown>>;

/** Every property with its path; without those of marked values, which are among the definitions. */
function propertiesOf(schema: Tree, path: string): { path: string; description: unknown }[] {
  return Object.entries(schema).flatMap(([key, one]) => {
    if (key === 'definitions' || typeof one !== 'object' || one === null) return [];
    if (key !== 'properties') return propertiesOf(one as Tree, path);
    return Object.entries(one as Record<string, Tree>).flatMap(([name, of]) => [
      { path: `${path}.${name}`, description: of['description'] },
      ...propertiesOf(of, `${path}.${name}`),
    ]);
  });
}

const plain = (schema: unknown): unknown =>
  JSON.parse(
    JSON.stringify(schema, (key, one: unknown) => (key === 'description' ? undefined : one)),
  );

test('every field says what it is called or who reads it, and nothing else is different', () => {
  const schema = describedSchema() as Tree;
  const properties = propertiesOf(schema, '');
  expect(properties.length).toBeGreaterThan(200);
  expect(properties.filter(({ description }) => !description)).toEqual([]);
  const saying = (at: string): unknown => properties.find(({ path }) => path === at)?.description;
  expect(saying('.ware.drying')).toBe(
    'Time to dry and cool. Read by size, and by all that starts from its answer.',
  );
  expect(saying('.supply.suppliers.quotes.carton')).toMatch(
    / Read by compare, order, collections\.$/,
  );
  expect(plain(schema)).toEqual(plain(scenarioJsonSchema()));
});
