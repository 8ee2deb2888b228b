/** Measuring, asked and answered: which sheet is worth a morning here, or what a filled one says. */
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import type { Ask, Asking, OutFile } from '../question.js';
import { sharesCharts } from './charts/counted-shares.js';
import { lawCharts } from './charts/fitted-laws.js';
import { sheetFacts } from './facts.js';
import { blankForm, filledForm } from './form.js';
import type { measure } from './head.js';
import { sheetPage } from './print.js';
import { measuredEdits, readFilled } from './read.js';
import { planBlocks } from './tell-plan.js';
import { readingBlocks } from './tell-reading.js';
import { sheetCsv } from './template.js';
import { sheetXlsx } from './workbook.js';
import { measurePlan } from './worth.js';

/** What the letter calls its form. */
const SHEET = 'sheet';
/** Days of each reading, unless said otherwise. */
const DAYS = 200;

export const ask: Ask<typeof measure> = async (asking, given) => {
  const { opened, runner, context, today, letter } = asking;
  const { scenario } = opened;
  const options = {
    level: scenario.level,
    seed: given.seed ?? scenario.seed,
    // The letter's days are those of one answer; here each is run some hundred times.
    days: letter === undefined ? (given.days ?? DAYS) : DAYS,
    piecesPerRack: piecesPerRackOf,
  };
  const facts = sheetFacts(scenario, context, []);
  if (given.read === undefined && letter?.offer === SHEET)
    return { ok: true, value: { json: null, blocks: [], form: blankForm(facts) } };
  if (given.read !== undefined && letter?.fill === true) {
    const form = await filledForm(given.read[0]!, facts);
    return form.ok ? { ok: true, value: { json: null, blocks: [], form: form.value } } : form;
  }
  if (given.read !== undefined) {
    const read = await readFilled({
      files: given.read,
      opened,
      text: textOf(asking),
      facts,
      today,
      runner,
      options,
    });
    if (!read.ok) return read;
    const { reading, text } = read.value;
    const files: OutFile[] =
      reading.measured.length === 0
        ? []
        : [
            {
              ending: `measured.${text.trimStart().startsWith('{') ? 'json' : 'yaml'}`,
              content: text,
              fresh: true,
            },
          ];
    return {
      ok: true,
      value: {
        json: reading,
        blocks: readingBlocks(reading, context),
        edits: measuredEdits(reading.measured),
        files: async () => [
          ...files,
          ...(await Promise.all(
            [
              ...lawCharts(reading.measured, context),
              ...sharesCharts(reading.measured, context),
            ].map(async ({ id, spec }) => ({
              ending: `measured.${id}.svg`,
              content: standaloneSvg(await renderSvg(spec)),
            })),
          )),
        ],
      },
    };
  }
  const plan = await measurePlan(opened, runner, options);
  const worth = sheetFacts(
    scenario,
    context,
    plan.parts.map(({ part }) => part),
  );
  return {
    ok: true,
    value: {
      json: plan,
      blocks: planBlocks(plan, context),
      files: async (_draw, typefaces) => [
        { ending: 'sheet.html', content: sheetPage(worth, await typefaces()) },
        { ending: 'sheet.csv', content: sheetCsv(worth) },
        { ending: 'sheet.xlsx', content: await sheetXlsx(worth) },
      ],
    },
  };
};

function textOf({ text }: Asking): string {
  if (text === undefined) throw new Error('the text of the scenario is needed to write a new one');
  return text;
}
