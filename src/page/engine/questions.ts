/** What the letter offers of the questions, worked out when the reader asks. */
import { inLetter } from '../../questions/letter-list.js';
import type { Asking, Offer, OutFile, Question, Reply } from '../../questions/question.js';
import { settingsTyped, type Value } from '../../questions/settings.js';
import type { Problem } from '../../scenario/problems.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Block } from '../../tell/block.js';
import { formatsFor } from '../../tell/format.js';
import { writeHtml } from '../../tell/write-html.js';
import type { GivenOptions } from '../../letter/live.js';
import { drawnCharts } from '../../tell/drawn-chart.js';
import type { Request, Section, ViewOffer } from '../messages.js';

/** A question that the scenario as it stands cannot answer. */
export class NoAnswer extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(({ message }) => message).join('. '));
  }
}

/** What is asked about; the solver is larger than the whole page. */
export type AskingHere = Omit<Asking, 'letter' | 'loadSolver'>;

/** What is asked of an offer. */
export type Offered = Pick<
  Extract<Request, { kind: 'question' }>,
  'offer' | 'typed' | 'table' | 'fill' | 'answer'
>;

/** What can be asked of a house. */
export const offersFor = (scenario: Scenario): ViewOffer[] =>
  inLetter.flatMap(({ offers = [], beside }: Question) =>
    offers
      .filter(({ applies }) => applies?.(scenario) ?? true)
      .map(({ id, title = null, boxes = {}, fillIn }) => ({
        id,
        title,
        boxes,
        fillIn: fillIn !== undefined,
        tables: beside?.(scenario) ?? [],
      })),
  );

/**
 * An offer as HTML, with its figures where it has any.
 * @param options what the letter's own answer was asked with
 * @param show takes what is known of it while the rest is worked out, as HTML
 * @throws NoAnswer with what stands in the way; SettingError for what was typed
 */
export async function section(
  asking: AskingHere,
  options: GivenOptions,
  offered: Offered,
  show: (html: string) => void = () => {},
): Promise<Section> {
  const question = found(({ offers = [] }) => offers.some(({ id }) => id === offered.offer));
  const written = (blocks: readonly Block[]): Promise<string> =>
    writeHtml(blocks, { draw: drawnCharts, formats: formatsFor(asking.context) });
  const { blocks, pages, figures, form, edits } = await replyOf(
    question,
    { ...asking, interim: async (known) => show(await written(known)) },
    options,
    offered,
  );
  return { html: pages?.join('\n') ?? (await written(blocks)), figures, form, edits };
}

/** The workbook that the letter saves. @throws NoAnswer with what stands in the way */
export async function workbook(asking: AskingHere, options: GivenOptions): Promise<OutFile> {
  const question = found((one) => one.workbook === true);
  return (await replyOf(question, asking, options, { offer: '', typed: {} })).workbook!();
}

function found(matches: (question: Question) => boolean): Question {
  const question = inLetter.find(matches);
  if (question === undefined) throw new Error('no question of the list answers this');
  return question;
}

async function replyOf(
  { ask, settings, offers = [] }: Question,
  asking: AskingHere,
  options: GivenOptions,
  { offer, typed, table, fill = false, answer }: Offered,
): Promise<Reply> {
  const { level, seed, days } = options;
  const asked: Readonly<Record<string, Value | undefined>> = { level, seed, days };
  const given = Object.fromEntries(Object.entries(asked).filter(([name]) => name in settings));
  const { fillIn } = offers.find(({ id }): boolean => id === offer) ?? ({} as Partial<Offer>);
  const reply = await ask(
    { ...asking, loadSolver: null, letter: { offer, options, fill, answer } },
    {
      ...given,
      ...settingsTyped(settings, typed),
      ...(fillIn === undefined || table === undefined
        ? {}
        : { [fillIn]: settings[fillIn]?.as === 'files' ? [table] : table }),
    },
  );
  if (!reply.ok) throw new NoAnswer(reply.problems);
  return reply.value;
}
