/** The size of the stock, asked and answered: scenario and settings → study → blocks. */
import { didYouMean } from '../../quantities/nearest.js';
import type { ListedDay } from '../../cafe/listed-day.js';
import { readListedDays } from '../../scenario/listed-day-schema.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { ReportContext } from '../../tell/context.js';
import { contextOf } from '../../tell/context-of.js';
import type { Ask, Asking } from '../question.js';
import type { Result } from '../result.js';
import { SettingError, type Given } from '../settings.js';
import type { Answer } from './answer.js';
import type { size } from './head.js';
import { scenarioStudy } from './scenario-study.js';
import type { Study, StudyOptions } from './study.js';
import { sizeBlocks } from './tell.js';

/** With fewer days than this, helpers would only be ready when the work is done. */
const WORTH_PREPARING = 4000;

export interface SizeStudy extends Study {
  /** The days of the file that was handed over; null where days were drawn. */
  readonly listed: readonly ListedDay[] | null;
}

export const ask: Ask<typeof size> = async (asking, given) => {
  checkChosen(given);
  const study = await askSize(asking, given, { peaks: given.peaks === true });
  if (!study.ok) return study;
  const { answer } = study.value;
  const habits = given.habits === true ? await withHabits(asking, answer, HABIT_DAYS) : answer;
  const full = given['allow-for-inputs'] === true ? await withInputs(asking, habits) : habits;
  return {
    ok: true,
    value: {
      json: full,
      // Only where somebody reads them: figures as text take a while to get ready.
      get blocks() {
        return sizeBlocks(full, shownOn(asking, answer));
      },
    },
  };
};

/** Habits and inputs are in doubt beside a stock that was chosen. @throws SettingError where it was given, or days were */
export function checkChosen(given: Given<typeof size.settings>): void {
  for (const name of ['habits', 'allow-for-inputs'] as const)
    if (given[name] === true && (given.stock !== undefined || given.day !== undefined))
      throw new SettingError(
        `is about a stock chosen on random days; leave out --${given.stock === undefined ? 'day' : 'stock'}, or --${name}`,
        name,
      );
}

/** Clocks and seats as on the kind of day that is reported. */
const shownOn = (
  { opened, context }: Pick<Asking, 'opened' | 'context'>,
  { tightestKind }: Answer,
): ReportContext => {
  if (tightestKind === undefined) return context;
  const { scenario, inputs } = opened;
  const { units, locale } = context;
  return {
    ...contextOf(scenario, inputs, context.version, piecesPerRackOf, units, tightestKind),
    locale,
  };
};

/** Days of each reading of a habit: where that is what was asked for, and where it comes along with the answer. */
const HABIT_DAYS = 1000;
export const FEW_HABIT_DAYS = 500;

/** The answer and how far it moves as habits vary; the reader of quick stocks is loaded only for this. */
export async function withHabits(
  { opened, runner }: Pick<Asking, 'opened' | 'runner'>,
  answer: Answer,
  days: number,
): Promise<Answer> {
  const { habitsOf } = await import('./habits.js');
  return { ...answer, habits: await habitsOf(opened, answer, runner, days) };
}

/** The answer, and the stock that holds the level wherever the inputs lie in their ranges. */
export async function withInputs(
  { opened, runner }: Pick<Asking, 'opened' | 'runner'>,
  answer: Answer,
): Promise<Answer> {
  const { allowForInputs } = await import('./allow-for-inputs.js');
  return { ...answer, allowingForInputs: await allowForInputs(opened, answer, runner) };
}

/**
 * The study behind the answer, for whoever makes more of it than text.
 * @throws SettingError for a stock of items that the scenario does not have, or a confidence that has no place
 */
export async function askSize(
  { opened, runner }: Pick<Asking, 'opened' | 'runner'>,
  { level, seed, days, confidence, stock, day }: Given<typeof size.settings>,
  extra: Pick<StudyOptions, 'peaks' | 'watch'> = {},
): Promise<Result<SizeStudy>> {
  const { ware, menu } = opened.scenario;
  checkItems(Object.keys(stock ?? {}), Object.keys(ware));
  if (day !== undefined && (opened.scenario.kinds?.length ?? 0) > 1)
    throw new SettingError(
      `"${day.name}" lists days of one kind, and the file has several under calendar.kinds; leave out --day, or take the kinds out of the file`,
      'day',
    );
  const read = day === undefined ? null : readListedDays(day.bytes, day.name, Object.keys(menu));
  if (read !== null && !read.ok) return read;
  const listed = read?.days ?? null;
  checkConfidence(confidence, stock !== undefined || listed !== null);
  if (stock === undefined && listed === null && (days ?? WORTH_PREPARING) >= WORTH_PREPARING)
    runner.prepare?.();
  const study = await scenarioStudy(opened, runner, {
    ...(level === undefined ? {} : { level }),
    ...(seed === undefined ? {} : { seed }),
    ...(days === undefined ? {} : { days }),
    ...(confidence === undefined ? {} : { confidence }),
    ...(stock === undefined ? {} : { stock }),
    ...(listed === null ? {} : { listed }),
    ...extra,
  });
  return { ok: true, value: { ...study, listed } };
}

/** A confidence belongs to a stock that is chosen on drawn days, and below a half it would promise nothing. */
function checkConfidence(confidence: number | undefined, given: boolean): void {
  if (confidence === undefined) return;
  if (given)
    throw new SettingError(
      'has no place beside a given stock or listed days; leave out one of them',
      'confidence',
    );
  if (confidence <= 0.5)
    throw new SettingError(
      `"${confidence}" is no better than a guess; write more than 50 %, such as 97.5%`,
      'confidence',
    );
}

function checkItems(given: readonly string[], known: readonly string[]): void {
  const wrong = given.filter((id) => !known.includes(id));
  if (wrong.length > 0)
    throw new SettingError(
      wrong
        .map((id) => `"${id}" is not an item of this scenario; ${didYouMean(id, known)}`)
        .join('\n'),
      'stock',
    );
}
