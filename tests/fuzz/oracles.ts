/** What must hold of every file, however it was spoilt. Each throws an Error that says what does not. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { inThisThread } from '../../src/cafe/runner.js';
import { isTooMuch } from '../../src/cafe/too-much.js';
import { readCounts } from '../../src/ordering/counts-file.js';
import { partProblems } from '../../src/questions/part-checks.js';
import { scenarioStudy } from '../../src/questions/size/scenario-study.js';
import type { Answer } from '../../src/questions/size/answer.js';
import { sizeBlocks } from '../../src/questions/size/tell.js';
import { askTill } from '../../src/questions/till/ask.js';
import { readTillMap } from '../../src/questions/till/read-map.js';
import { readListedDays } from '../../src/scenario/listed-day-schema.js';
import { formatProblem, type Problem } from '../../src/scenario/problems.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { writeText } from '../../src/tell/write-text.js';

/** A case may take this much processor time, ms, however busy the machine is. */
const MOST_MS = 5000;
const DAYS = 20;

/** What became of a case. */
export type Outcome = 'refused' | 'answered' | 'too much';

class TooSlow extends Error {}

const ms = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** No control characters beyond line breaks, and none that turn the writing round. */
const CONTROLS = /(?!\n)[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u;
/** Words of a machine; as a value they are quoted. */
const RAW =
  /\bundefined\b|\bNaN\b|Infinity|\[object |Too (small|big)|Invalid input|Unrecognized key|\bexpected \w+ to\b|Cannot read|is not iterable/;

const quotesApart = (text: string): string => text.replace(/"[^"]*"/g, '""');

export function plain(text: string, what: string): void {
  if (CONTROLS.test(text))
    throw new Error(`${what} has a control character: ${JSON.stringify(text)}`);
  if (RAW.test(quotesApart(text))) throw new Error(`${what} speaks as a machine: ${text}`);
}

/** Problems name a place in the text, a rule and a remedy. */
export function sound(problems: readonly Problem[], text: string): 'refused' {
  if (problems.length === 0) throw new Error('refused without a reason');
  const lines = text.split(/\r\n|\r|\n/).length;
  for (const one of problems) {
    // Keys may hold anything; what is printed is cleaned by the command.
    plain(quotesApart(`${one.rule}; ${one.remedy}`), 'a problem');
    plain(quotesApart(one.message), 'a message');
    if (formatProblem(one).includes('\n'))
      throw new Error(`a problem has two lines: ${one.message}`);
    if (one.line > lines) throw new Error(`line ${one.line} of ${lines}: ${one.message}`);
  }
  return 'refused';
}

/** Every number of an answer is one. */
export function finite(value: unknown, path = 'answer'): void {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${path} is ${value}`);
  if (typeof value === 'object' && value !== null)
    for (const [key, one] of Object.entries(value)) finite(one, `${path}.${key}`);
}

/** What the answer says is so. */
function truthful(answer: Answer, text: string): void {
  const { stock, guests, certified, level } = answer;
  const must = (holds: boolean, what: string): void => {
    if (!holds) throw new Error(`${what}: ${JSON.stringify({ stock, guests, certified })}`);
  };
  for (const { pieces, unitCost } of stock) {
    must(Number.isInteger(pieces) && pieces >= 0, 'pieces are whole');
    must(unitCost >= 0, 'a piece costs nothing or something');
  }
  must(level > 0 && level < 1, 'the level is a share');
  must(guests.served >= 0 && guests.turnedAway >= 0, 'guests are counted');
  if (certified !== null)
    must(
      certified.low <= certified.level && certified.level <= certified.high,
      'the level lies in its interval',
    );
  if (/no guest came/.test(text)) must(guests.served + guests.turnedAway === 0, 'nobody came');
  if (/every guest was turned away/.test(text)) must(guests.served === 0, 'nobody was served');
  if (/You need no cups/.test(text))
    must(
      stock.every(({ pieces }) => pieces === 0),
      'no ware',
    );
}

/** `check` and `size --days 20` of a scenario. */
export async function scenarioCase(text: string): Promise<Outcome> {
  const began = ms();
  const inTime = (): void => {
    if (ms() - began > MOST_MS) throw new TooSlow(`not done after ${MOST_MS} ms`);
  };
  const read = readScenario(text, 'x.yaml', { piecesPerRack: piecesPerRackOf });
  inTime();
  if (!read.ok) return sound(read.problems, text);
  for (const { message } of read.warnings) plain(quotesApart(message), 'a warning');
  const parts = partProblems(read, 'x.yaml', { piecesPerRack: piecesPerRackOf });
  inTime();
  if (parts.length > 0) sound(parts, text);
  const runner = inThisThread(
    () => {},
    async () => inTime(),
  );
  try {
    const { answer } = await scenarioStudy(read, runner, { days: DAYS, certifyOn: DAYS, watch: 5 });
    finite(answer);
    const context = contextOf(read.scenario, read.inputs, '0', piecesPerRackOf);
    const said = writeText(sizeBlocks(answer, context), { width: 80, all: true });
    plain(said, 'the answer');
    truthful(answer, said);
    inTime();
    return 'answered';
  } catch (error) {
    if (!isTooMuch(error)) throw error;
    plain(error.message, 'the refusal');
    return 'too much';
  }
}

const root = process.cwd();
export const fileOf = (name: string): string => readFileSync(`${root}/${name}`, 'utf8');

/** Without what only the comparison reads. */
const bakery = fileOf('scenarios/4-bakery-corner.yaml').split('# What could be different')[0]!;
const bakeryMap = fileOf('shared/till/bakery-saturdays.map.yaml');
const allRows = fileOf('shared/till/bakery-quarter-hours.csv').split('\n');
const isSaturday = (row: string): boolean => new Date(row.slice(0, 10)).getUTCDay() === 6;
/** The header and a few Saturdays. */
export const bakeryRows = [allRows[0]!, ...allRows.slice(1).filter(isSaturday).slice(0, 330)];
export const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A map of a till, with the export it belongs to. */
export async function mapCase(text: string): Promise<Outcome> {
  const map = readTillMap(text, 'map.yaml');
  if (!map.ok) return sound(map.problems, text);
  return till(text, bakeryRows.join('\n'), text);
}

/** An export of a till, with its map. */
export const salesCase = (text: string): Promise<Outcome> => till(bakeryMap, text, text);

async function till(map: string, sales: string, spoiltText: string): Promise<Outcome> {
  const reply = await askTill({
    map: { name: 'map.yaml', bytes: encoded(map) },
    scenario: { name: 'base.yaml', bytes: encoded(bakery) },
    sales: {
      name: 'sales.csv',
      async *open() {
        yield encoded(sales);
      },
    },
    outName: 'new.yaml',
  });
  if (!reply.ok) return sound(reply.problems, `${spoiltText}\n${bakery}\n${sales}`);
  finite({ ...reply.value.kinds.fit }, 'fit');
  plain(writeText(reply.value.blocks, { width: 80, all: true }), 'the answer');
  const made = readScenario(reply.value.text, 'new.yaml', { piecesPerRack: piecesPerRackOf });
  if (!made.ok) throw new Error(`the fitted scenario does not read: ${made.problems[0]?.message}`);
  return 'answered';
}

/** Pieces counted in a stocktake. */
export async function countsCase(text: string): Promise<Outcome> {
  const counts = readCounts(text, ['medium-cup', 'saucer', 'teaspoon']);
  if (counts.ok) {
    finite(counts.value);
    for (const { counted } of counts.value)
      if (!Number.isInteger(counted) || counted < 0) throw new Error(`${counted} pieces counted`);
    return 'answered';
  }
  if (counts.problems.length === 0) throw new Error('refused without a reason');
  for (const { rule, remedy } of counts.problems)
    plain(quotesApart(`${rule}; ${remedy}`), 'a problem');
  return 'refused';
}

const demo = parse(fileOf('scenarios/1-commuter-bar.yaml')) as Record<string, unknown>;
delete demo['alternatives'];
const opened = readScenario(JSON.stringify(demo), 'demo.json', { piecesPerRack: piecesPerRackOf });

/** Listed days of the demo. */
export async function listedCase(text: string): Promise<Outcome> {
  if (!opened.ok) throw new Error('the demo does not read');
  const read = readListedDays(text, 'd.json', Object.keys(opened.scenario.menu));
  if (!read.ok) return sound(read.problems, text);
  try {
    const { answer } = await scenarioStudy(opened, inThisThread(), { listed: [...read.days] });
    finite(answer);
    return 'answered';
  } catch (error) {
    if (!isTooMuch(error)) throw error;
    return 'too much';
  }
}
