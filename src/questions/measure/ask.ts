/** Measuring, asked and answered: which sheet is worth a morning here, or what a filled one says. */
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Ask, Asking } from '../question.js';
import { sheetFacts } from './facts.js';
import { planFiles, readingFiles } from './files.js';
import { blankForm, filledForm } from './form.js';
import type { measure } from './head.js';
import { measuredEdits, readFilled } from './read.js';
import { planBlocks } from './tell-plan.js';
import { readingBlocks } from './tell-reading.js';
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
    return {
      ok: true,
      value: {
        json: reading,
        blocks: readingBlocks(reading, context),
        edits: measuredEdits(reading.measured),
        jsonFile: 'reading.json',
        files: () => readingFiles(reading, text, context),
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
      jsonFile: 'measure.json',
      files: (_draw, typefaces) => planFiles(worth, typefaces),
    },
  };
};

function textOf({ text }: Asking): string {
  if (text === undefined) throw new Error('the text of the scenario is needed to write a new one');
  return text;
}
