/**
 * Fields of the schema that a file may give and no answer reads are forbidden. A house with nearly all sections is put to questions
 * through a record of what is read; a field that this house does not give must stand in the list below, with those it excludes.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readersOf } from '../../src/cli/field-readers.js';
import { fieldsRead } from './fields-read.js';

/** Other ways to say what the house says already, or sections that change how all others are read; other tests read them. */
const NOT_GIVEN = [
  'arrivals.slots.every',
  'arrivals.slots.parties',
  'arrivals.steps.for',
  'arrivals.steps.parties',
  'calendar.kinds.*.daysAYear',
  'calendar.kinds.*.name',
  'calendar.kinds.*.without',
  'costs.daysAYear',
  'counter.making',
  'hours.for',
  'racks.plan', // read while the file is read
  'suit.drinks.*.shot.ratio',
  'suit.drinks.*.shot.tds',
  'suit.drinks.*.takeaway.shot.ratio',
  'suit.drinks.*.takeaway.shot.tds',
  'suit.shot.ratio',
  'suit.shot.tds',
  'supply.openDaysAWeek',
  'supply.suppliers.*.freight.perKg',
  'washing.machines.down.for',
  'washing.machines.down.from',
  'washing.machines.name', // read by the forms
];

test('every field that a file gives is read, and every field of the schema is given or listed', async () => {
  const { fields, readBy, unread, untried } = await fieldsRead(
    readFileSync('tests/questions/fields.yaml', 'utf8'),
    {
      compare: { days: 20, map: true },
      suit: {},
      order: { days: 20 },
      collections: { days: 20 },
    },
    (file) => readFileSync(`scenarios/house-50/${file}`),
  );
  expect(unread, 'given, and read by no answer').toEqual([]);
  expect(untried, 'neither in fields.yaml nor in the list').toEqual(NOT_GIVEN);
  const tried = fields.filter((field) => !untried.includes(field));
  // What all of them read is what `size` reads, whose answer they start from.
  const size = fields.filter((field) =>
    Object.values(readBy).every((read) => read.includes(field)),
  );
  for (const [name, read] of Object.entries({ size, ...readBy }))
    expect(
      tried.filter((field) => [name, 'size'].some((one) => readersOf(field).includes(one))),
      `what ${name} reads, as field-readers.ts has it`,
    ).toEqual(read);
});
