/** What must hold of tables that people fill in, and of saved letters, however they were spoilt. */
import { inThisThread } from '../../src/cafe/runner.js';
import { scriptData } from '../../src/letter/live.js';
import { scenarioIn } from '../../src/page/two-letters.js';
import { sheetFacts } from '../../src/questions/measure/facts.js';
import { readFilled } from '../../src/questions/measure/read.js';
import { readingBlocks } from '../../src/questions/measure/tell-reading.js';
import { baseOf, sitesOf } from '../../src/questions/sites/site.js';
import { readTable } from '../../src/questions/sites/table.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario, type ReadResult } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { writeText } from '../../src/tell/write-text.js';
import { smallTexts } from './houses.js';
import { smallHouse } from '../measuring/brute-force.js';
import { morningOf } from '../measuring/morning.js';
import { encoded, finite, plain, scenarioCase, sound, type Outcome } from './oracles.js';

const options = { piecesPerRack: piecesPerRackOf };
const openedOf = (text: string, name: string): Extract<ReadResult, { ok: true }> => {
  const read = readScenario(text, name, options);
  if (!read.ok) throw new Error(`${name} does not read: ${read.problems[0]?.message}`);
  return read;
};

const house = openedOf(smallHouse, 'house.yaml');
const context = contextOf(house.scenario, house.inputs, '', piecesPerRackOf);
const facts = sheetFacts(house.scenario, context, []);

/** Rows of a morning's sheet as somebody filled it in. */
export const sheetRows = morningOf(house.scenario, 'fuzz', 0).csv.split('\n');

/** A filled sheet: what it says is finite, and the scenario it makes reads. */
export async function sheetCase(text: string): Promise<Outcome> {
  const read = await readFilled({
    files: [{ name: 'sheet.csv', bytes: encoded(text) }],
    opened: house,
    text: smallHouse,
    facts,
    today: '2026-12-31',
    runner: inThisThread(),
    options: { ...options, level: 0.95, seed: 'fuzz', days: 10 },
  });
  if (!read.ok) return sound(read.problems, text);
  finite(read.value.reading, 'reading');
  plain(
    writeText(readingBlocks(read.value.reading, context), { width: 80, all: true }),
    'the answer',
  );
  openedOf(read.value.text, 'the measured scenario');
  return 'answered';
}

const kiosk = openedOf(smallTexts[0]!, 'base.yaml');
export const siteRows = [
  'id,name,drop,opening,seats,guests,stay,dwell,machines,makers,clearers,have',
  'alder-lane,Alder Lane,north,2027-03-15,26,60,40 %,,,,,',
  'beacon-yard,Beacon Yard,south,2027-04-12,18,48,35 %,,,,,',
  'cobble-row,Cobble Row,south,2027-05-10,18,44,45 %,14 min,,2,1,',
  'dovecote,Dovecote,north,2027-06-07,34,69,40 %,,,,,cup=30; saucer=30; mug=24',
  'elm-steps,Elm Steps,north,2027-07-05,12,30,50 %,,undercounter,1,,cup=6',
];

/** A table of sites: every row is a scenario, or the table is refused. */
export async function sitesCase(text: string): Promise<Outcome> {
  const table = readTable(encoded(text), 'sites.csv', kiosk);
  if (!table.ok) return sound(table.problems, text);
  const sites = sitesOf(table.value, baseOf(kiosk, 'fuzz'));
  if (!sites.ok) return sound(sites.problems, text);
  if (sites.value.length === 0) throw new Error('a table without sites was taken');
  for (const { opened, line } of sites.value) {
    if (line.id === '') throw new Error(`line ${line.line} has no id`);
    finite(opened.scenario.arrivals, `line ${line.line}`);
  }
  return 'answered';
}

/** A document with one element, as far as a saved letter is looked at. */
class OneElement {
  parseFromString(html: string): { getElementById(): { textContent: string } | null } {
    const found = /<script type="application\/json" id="given">([^<]*)<\/script>/.exec(html);
    return { getElementById: () => (found === null ? null : { textContent: found[1]! }) };
  }
}

/** A saved letter as text, from what it carries with the scenario still a tree: what stands in it besides is not read. */
export function letterOf(given: unknown): string {
  const written = JSON.stringify(given, (key, value: unknown) =>
    key === 'text' && typeof value === 'object' ? JSON.stringify(value) : value,
  );
  return `<!doctype html><body><script type="application/json" id="given">${scriptData(JSON.parse(written))}</script>`;
}

/** What a saved letter carries is a scenario as good or bad as any, or the letter is none. */
export async function letterCase(html: string): Promise<Outcome> {
  Object.assign(globalThis, { DOMParser: OneElement });
  const found = scenarioIn(html);
  return found === null ? 'refused' : scenarioCase(found.text);
}
