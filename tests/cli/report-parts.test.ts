/** A question's part in the letter takes the files it asks for, and refuses a bad one before a day is run. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openScenario } from '../../src/cli/open-scenario.js';
import { partsAsked, partsOf } from '../../src/cli/report-parts.js';
import type { GivenFile } from '../../src/questions/settings.js';
import { fixtureContext } from '../tell/fixture.js';

const fileName = 'scenarios/4-bakery-corner.yaml';
const fileOf = (name: string): GivenFile => ({
  name,
  bytes: readFileSync(`shared/till/${name}`),
});
const till = fileOf('bakery-quarter-hours.csv');
const map = fileOf('bakery-all-days.map.yaml');
const listed = (text: string): GivenFile => ({
  name: 'holidays.csv',
  bytes: new TextEncoder().encode(text),
});

const partsFor = (given: Readonly<Record<string, GivenFile>>) =>
  partsAsked((settings) =>
    Promise.resolve(
      Object.fromEntries(Object.entries(given).filter(([name]) => Object.hasOwn(settings, name))),
    ),
  );

test('recorded days take a list of holidays beside the export and its map', async () => {
  const holidays = listed('date\n1 May\n');
  const parts = await partsFor({ till, map, holidays });
  expect(parts.map(({ question, given }) => [question.name, given['holidays']])).toEqual([
    ['backtest', holidays],
  ]);
  const opened = await openScenario(fileName);
  const asking = { opened, fileName, context: fixtureContext(), text: opened.text };
  await expect(partsOf({ ...asking, parts, given: {}, threads: 1 })).rejects.toThrow(
    /^holidays\.csv:2:1: "1 May" is not a day of the calendar; write a day a line/,
  );
});

test('holidays alone are refused with what they go with, and without any file there is no part', async () => {
  await expect(partsFor({ holidays: listed('2026-05-01') })).rejects.toThrow(
    /^--holidays is given without --(?:till|map); /,
  );
  expect(await partsFor({})).toEqual([]);
});
