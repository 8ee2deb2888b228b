/** The JSON Schema of scenario files with what editors show beside a field: what it is called, and who reads it. */
import { scenarioJsonSchema } from '../scenario/scenario.js';
import { isGroup } from '../scenario/tree.js';
import { fieldWords } from '../tell/words/fields.js';
import { readersOf } from './field-readers.js';

/** @returns a new schema; validators see no difference */
export function describedSchema(): unknown {
  const { definitions, ...schema } = scenarioJsonSchema();
  return { ...(described(schema, '') as object), definitions };
}

function described(schema: unknown, path: string): unknown {
  if (Array.isArray(schema)) return schema.map((one) => described(one, path));
  if (!isGroup(schema)) return schema;
  return Object.fromEntries(
    Object.entries(schema).map(([key, value]) => {
      if (key === 'properties' && isGroup(value))
        return [
          key,
          Object.fromEntries(
            Object.entries(value).map(([name, one]) => {
              const at = path === '' ? name : `${path}.${name}`;
              return [name, { description: about(at), ...(described(one, at) as object) }];
            }),
          ),
        ];
      if (key === 'additionalProperties') return [key, described(value, `${path}.*`)];
      return [key, WITHIN.has(key) ? described(value, path) : value];
    }),
  );
}

/** Keys whose schemas stand for the same place. */
const WITHIN: ReadonlySet<string> = new Set(['items', 'anyOf', 'oneOf', 'allOf']);

/** "Price of a carton. Read by order, collections." */
function about(place: string): string | undefined {
  const path = place.replace('.machines.unlimited', '.machines');
  const readers = readersOf(path);
  const read = readers.includes('size')
    ? 'Read by size, and by all that starts from its answer.'
    : readers.length > 0
      ? `Read by ${readers.join(', ')}.`
      : undefined;
  const parts = [fieldWords[path] && `${fieldWords[path]}.`, read].filter((part) => part);
  return parts.length === 0 ? undefined : parts.join(' ');
}
