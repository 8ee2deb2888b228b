/**
 * npm run study:fields: fields of the schema that a file may give and no answer reads. A house with nearly all sections is put to the
 * questions through a record of what is read. A spread counts as reading, so this finds fields that are never touched, not all that
 * are taken up and dropped. About a minute of one core; `tests/questions/fields.test.ts` asks the same of a small house.
 */
import { readFileSync } from 'node:fs';
import { fieldsRead } from './fields-read.js';

/** Questions, and what they are asked with. */
const ASKED = {
  order: { days: 20 },
  collections: { days: 20 },
  racks: {},
  suit: {},
  compare: { days: 20, map: true, moves: true },
};

export async function main(): Promise<void> {
  const { fields, read, unread, untried } = await fieldsRead(
    readFileSync('tests/studies/fields.yaml', 'utf8'),
    ASKED,
    // Where the tables lie that it names.
    (file) => readFileSync(`scenarios/house-50/${file}`),
  );
  process.stdout.write(
    `${fields.length} fields; read: ${read.length}.\nNeither given nor read, so not tried: ${untried.join(', ')}\nGiven, and read by nobody: ${unread.join(', ') || 'none'}\n`,
  );
  if (unread.length > 0) process.exitCode = 1;
}
