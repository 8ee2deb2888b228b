/** Answers of the example scenarios to the further questions, on few days, and their sections as HTML. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { ReportContext } from '../../../src/tell/context.js';
import { contextOf } from '../../../src/tell/context-of.js';
import { drawnCharts } from '../../../src/tell/drawn-chart.js';
import { tellComparison } from '../../../src/questions/compare/tell.js';
import { mapBlocks } from '../../../src/questions/compare/tell-map.js';
import { movesBlocks } from '../../../src/questions/compare/tell-moves.js';
import { orderBlocks } from '../../../src/questions/order/tell.js';
import type { Block } from '../../../src/tell/block.js';
import { formatsFor } from '../../../src/tell/format.js';
import { writeHtml } from '../../../src/tell/write-html.js';
import { racksBlocks } from '../../../src/questions/racks/tell.js';
import { suitBlocks } from '../../../src/questions/suit/tell.js';
import type { Opened } from '../../../src/questions/compare/alternatives.js';
import type {
  Comparison,
  MovesAnswer,
  TradeOffMap,
} from '../../../src/questions/compare/answer.js';
import type { OrderStudy } from '../../../src/questions/order/study.js';
import { wholeComparison } from '../../../src/questions/compare/whole.js';
import { mapOf, movesOf } from '../../../src/questions/compare/parts.js';
import { orderStudy } from '../../../src/questions/order/study.js';
import { racksStudy } from '../../../src/questions/racks/study.js';
import { suitStudy } from '../../../src/questions/suit/study.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import type { Outcome } from '../../../src/quantities/flaw.js';
import type { RacksAnswer } from '../../../src/questions/racks/answer.js';
import { readScenario } from '../../../src/scenario/read-scenario.js';
import { inThisThread } from '../../../src/cafe/runner.js';
import type { SuitAnswer } from '../../../src/suiting/answer.js';

const folder = fileURLToPath(new URL('../../../scenarios/', import.meta.url));
export const scenarioNames: readonly string[] = readdirSync(folder).filter((name) =>
  name.endsWith('.yaml'),
);

export interface Answers {
  readonly alternatives: Comparison;
  readonly map: TradeOffMap;
  readonly moves: MovesAnswer;
  readonly racks: RacksAnswer;
  readonly order: OrderStudy;
  readonly suit: SuitAnswer;
}

export interface Answered {
  readonly opened: Opened;
  readonly context: ReportContext;
  readonly answers: Answers;
}

/** Few alternatives, few points of the map and few inputs with a range: a large house is then answered in seconds too. */
function thinned(opened: Opened): Opened {
  const { scenario } = opened;
  const ranged = new Set(opened.inputs.filter(({ range }) => range !== null).slice(0, 3));
  const alternatives = Object.fromEntries(Object.entries(scenario.alternatives ?? {}).slice(0, 1));
  return {
    ...opened,
    inputs: opened.inputs.map((input) => (ranged.has(input) ? input : { ...input, range: null })),
    scenario: {
      ...scenario,
      ...(scenario.alternatives === undefined ? {} : { alternatives }),
      costs: {
        ...scenario.costs,
        map: {
          machines: [1, 2, 3],
          classes: ['undercounter'],
          clearing: [5 * 60_000, 10 * 60_000],
        },
      },
    },
  };
}

export function opened(name: string): Opened {
  const read = readScenario(readFileSync(`${folder}${name}`), name, {
    piecesPerRack: piecesPerRackOf,
  });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read;
}

export async function valueOf<A>(
  told: Promise<Outcome<A, { readonly message: string }>>,
): Promise<A> {
  const result = await told;
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('\n'));
  return result.value;
}

async function answered(name: string): Promise<Answered> {
  const read = thinned(opened(name));
  const { scenario, inputs } = read;
  const context = contextOf(scenario, inputs, '0', piecesPerRackOf);
  const runner = inThisThread();
  const asking = {
    opened: read,
    fileName: name,
    runner,
    context,
    today: '2027-03-01',
    loadSolver: null,
  };
  const days = 50;
  const date = '2027-03-01';
  const answers = {
    alternatives: (await valueOf(wholeComparison(asking, { days }))).json,
    map: await valueOf(mapOf(asking, { days })),
    moves: await movesOf(asking, { days }),
    racks: await racksStudy(scenario, runner),
    order: await valueOf(orderStudy(scenario, runner, { days, date, loadSolver: null, inputs })),
    suit: await suitStudy(scenario, inputs, runner),
  };
  return { opened: read, context, answers };
}

const known = new Map<string, Promise<Answered>>();
export function answersOf(name: string): Promise<Answered> {
  const found = known.get(name) ?? answered(name);
  known.set(name, found);
  return found;
}

export const htmlOf = (blocks: readonly Block[], context: ReportContext): Promise<string> =>
  writeHtml(blocks, { draw: drawnCharts, formats: formatsFor(context) });

/** Those within folds too. */
const withoutPictures = (blocks: readonly Block[]): Block[] =>
  blocks
    .filter(({ kind }) => kind !== 'picture')
    .map((block) =>
      block.kind === 'fold' ? { ...block, blocks: withoutPictures(block.blocks) } : block,
    );

export type SectionName = keyof Answers;

/** @param pictures false: the words and tables alone */
export async function sectionsOf(
  { opened: { scenario }, context, answers }: Answered,
  pictures = true,
): Promise<Record<SectionName, string>> {
  const { alternatives, map, moves, racks, order, suit } = answers;
  const html = (blocks: readonly Block[]): Promise<string> =>
    htmlOf(pictures ? blocks : withoutPictures(blocks), context);
  return {
    alternatives: await html(tellComparison({ ...alternatives, map, moves }, context)),
    map: await html(mapBlocks(map, context)),
    moves: await html(movesBlocks(moves, context)),
    racks: await html(racksBlocks(racks, scenario, context)),
    order: await html(orderBlocks(order, context)),
    suit: await html(suitBlocks(suit, context)),
  };
}

/** Text as a reader sees it: tags dropped, entities read, spaces joined. */
export const readText = (html: string): string =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(amp|lt|gt|quot|#39|#(\d+));/g, (_, name: string, code: string | undefined) =>
      code === undefined
        ? { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" }[name]!
        : String.fromCodePoint(Number(code)),
    )
    .replace(/[\s\u00A0]+/g, ' ');
