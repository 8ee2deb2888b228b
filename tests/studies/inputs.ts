/**
 * Inputs that are not known exactly: houses as the demo may truly be, each input drawn from its range; a morning of each
 * is simulated and its sheet read; the stock that follows is tried on days of the true house. How often does it hold the
 * level, and how often do stocks that allow for the inputs, or that ask for a higher level instead?
 */
import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inThisThread } from '../../src/cafe/runner.js';
import { Stream, streamKey } from '../../src/engine/streams.js';
import { modelsOf } from '../../src/questions/compare/evaluate.js';
import { sheetFacts } from '../../src/questions/measure/facts.js';
import { habitReaders, measuredInputs } from '../../src/questions/measure/inputs.js';
import { sheetsOf } from '../../src/questions/measure/given-sheets.js';
import {
  drawnPeaks,
  heldOn,
  houseDrawer,
  stockOver,
} from '../../src/questions/size/allow-for-inputs.js';
import { unitCosts } from '../../src/scenario/compile.js';
import { editScenario } from '../../src/scenario/edit-scenario.js';
import { ownedPieces } from '../../src/scenario/have.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import type { Scenario } from '../../src/scenario/scenario.js';
import type { Peaks } from '../../src/sizing/peaks.js';
import { exactBinomialInterval } from '../../src/statistics/exact-binomial-interval.js';
import { meanWithInterval } from '../../src/statistics/mean-with-interval.js';
import { contextOf } from '../../src/tell/context-of.js';
import { morningOf } from '../measuring/morning.js';

const HOUSE = '1-commuter-bar';
const FILE = 'reports/study-inputs.json';
const MORNINGS = 200;
const LEVEL = 0.95;
/** Asked for in its place, without allowing for inputs. */
const HIGHER = [0.975, 0.99, 0.995];
const [PLAIN_DAYS, TRUE_DAYS, DRAWS, DAYS_EACH] = [400, 2000, 200, 5];
const SEED = 'study-inputs';
/**
 * Mornings that share the ranks at which inputs are drawn, one set after the other: what a morning does not measure,
 * as the measures of ware and racks, is then drawn alike, and racks are filled once a set (most of the time otherwise).
 */
const A_SET = 20;

type Stocks = Readonly<Record<string, readonly number[]>>;
/** True level and cost by way of choosing. */
type Row = Readonly<Record<string, { readonly level: number; readonly cost: number }>>;

const runner = inThisThread();

function opened(text: string) {
  const read = readScenario(text, HOUSE, { piecesPerRack: piecesPerRackOf });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
}

async function peaksOf(scenario: Scenario, seed: string, days: number): Promise<Peaks[]> {
  const kinds: Peaks[] = [];
  for (const { model, seed: own } of modelsOf(scenario, seed, piecesPerRackOf)) {
    const task = { model, seed: own, from: 0, days, stock: null, listed: null, byDay: false };
    kinds.push({ days, ware: model.ware.length, data: (await runner.run(task)).peaks });
  }
  return kinds;
}

/** Stocks for what is known of a house: plain, at higher levels, and allowing for its inputs. */
async function stocksFor(
  house: ReturnType<typeof opened>,
  name: string,
  seed: string,
  set: number,
): Promise<Stocks> {
  const [costs, owned] = [unitCosts(house.scenario), ownedPieces(house.scenario)];
  const plain = await peaksOf(house.scenario, seed, PLAIN_DAYS);
  const at = (level: number) => stockOver(plain, costs, owned, level, 1).stock;
  const drawn = await drawnPeaks(house, runner, `${SEED}/set ${set}`, DRAWS, DAYS_EACH);
  return {
    [`${name}, plain`]: at(LEVEL),
    ...Object.fromEntries(HIGHER.map((level) => [`${name}, asked for ${level}`, at(level)])),
    [`${name}, allowing for inputs`]: stockOver(drawn, costs, owned, LEVEL, DAYS_EACH).stock,
  };
}

export async function main(folder: string): Promise<void> {
  const text = readFileSync(`scenarios/${HOUSE}.yaml`, 'utf8');
  const assumed = opened(text);
  const { scenario, inputs } = assumed;
  const costs = unitCosts(scenario);
  const facts = sheetFacts(scenario, contextOf(scenario, inputs, '', piecesPerRackOf), []);
  const readers = habitReaders(scenario, 'readers');
  const draw = houseDrawer(assumed);
  const log = join(folder, 'inputs.jsonl');
  const rows: Row[] = existsSync(log)
    ? readFileSync(log, 'utf8')
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as Row)
    : [];
  let [before, ofSet]: [Stocks, number] = [{}, -1];
  for (let number = rows.length; number < MORNINGS; number += 1) {
    const set = Math.floor(number / A_SET);
    if (set !== ofSet)
      [before, ofSet] = [await stocksFor(assumed, 'before', `${SEED}/before ${set}`, set), set];
    const truth = draw(new Stream(streamKey(SEED, `truth ${number}`)));
    const { csv } = morningOf(truth, `${SEED}/morning`, number);
    const bytes = new TextEncoder().encode(csv);
    const sheet = sheetsOf({ name: 'sheet.csv', bytes }, facts, '2026-12-31');
    if (!sheet.ok) throw new Error(sheet.problems.map(({ message }) => message).join('\n'));
    const { measured } = measuredInputs(sheet.value, scenario, inputs, null, readers);
    const known = opened(
      editScenario(
        text,
        measured.map(({ at, value, range, source }) => ({
          kind: 'set' as const,
          path: at,
          value,
          basis: 'measured' as const,
          range,
          source,
        })),
      ),
    );
    const after = await stocksFor(known, 'after a morning', `${SEED}/${number}`, set);
    const days = await peaksOf(truth, `${SEED}/truth ${number}`, TRUE_DAYS);
    const row = Object.fromEntries(
      Object.entries({ ...before, ...after }).map(([name, stock]) => [
        name,
        {
          level: heldOn(days, stock, 1).level,
          cost: stock.reduce((sum, pieces, at) => sum + pieces * costs[at]!, 0) / 100,
        },
      ]),
    );
    rows.push(row);
    appendFileSync(log, `${JSON.stringify(row)}\n`);
    if (rows.length % 10 === 0) keep(rows);
  }
  keep(rows);
}

function keep(rows: readonly Row[]): void {
  const told = Object.keys(rows[0]!).map((name) => {
    const levels = rows.map((row) => row[name]!.level).toSorted((a, b) => a - b);
    const { mean, low, high } = meanWithInterval(levels);
    const held = levels.filter((level) => level >= LEVEL).length;
    const share = exactBinomialInterval(held, levels.length);
    return [
      name,
      {
        trueLevel: { mean, interval: [low, high] },
        holdsTheLevel: { share: share.share, interval: [share.low, share.high] },
        lowestTenth: levels[Math.floor(levels.length / 10)],
        meanCost: meanWithInterval(rows.map((row) => row[name]!.cost)).mean,
      },
    ];
  });
  const made = {
    command: 'npm run study:inputs',
    house: HOUSE,
    seed: SEED,
    level: LEVEL,
    mornings: rows.length,
    plainDays: PLAIN_DAYS,
    daysOfTheTrueHouse: TRUE_DAYS,
    draws: DRAWS,
    daysEach: DAYS_EACH,
    morningsThatShareDraws: A_SET,
  };
  writeFileSync(FILE, `${JSON.stringify({ made, ...Object.fromEntries(told) }, null, 1)}\n`);
}
