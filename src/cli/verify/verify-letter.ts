/** A letter worked out again from what it holds: its data and every printed part. */
import type { Runner } from '../../cafe/runner.js';
import { LETTER_PARTS } from '../../letter/letter.js';
import { contextFor } from '../../page/engine/opened.js';
import { picturedParts, tightPart, writtenParts } from '../../page/engine/telling.js';
import { FEW_HABIT_DAYS, withHabits, withInputs } from '../../questions/size/ask.js';
import { riskCurves } from '../../questions/size/risk-curves.js';
import { scenarioStudy } from '../../questions/size/scenario-study.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { readScenario } from '../../scenario/read-scenario.js';
import { madeSentence } from '../../questions/made.js';
import { sha256 } from '../made.js';
import { MistakeError } from '../mistakes.js';
import { problemsAsMistake } from '../open-scenario.js';
import { countValues, valueDifferences, wordDifferences, type Difference } from './differences.js';
import type { SavedLetter } from './letter-file.js';

/** Days watched for the pictures of every letter. */
export const DAYS_WATCHED = 300;

export interface Verified {
  /** Version that made the file. */
  readonly version: string;
  readonly seed: string;
  /** Values that were compared, and printed parts. */
  readonly values: number;
  readonly parts: number;
  readonly differences: readonly Difference[];
}

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value)) as unknown;

/** @throws MistakeError where what the letter holds is damaged */
export async function verifyLetter(
  { given, scenario, parts }: SavedLetter,
  name: string,
  runner: Runner,
): Promise<Verified> {
  const { fileName, text, options, answer: printed, curves, habits, made } = scenario;
  if (made !== undefined && 'sha256' in made.scenario && made.scenario.sha256 !== sha256(text))
    throw new MistakeError(
      `${name}: the scenario inside is not the one that the letter was made from (its SHA-256 differs); take the letter as it was sent`,
    );
  const opened = readScenario(text, `${fileName} in ${name}`, { piecesPerRack: piecesPerRackOf });
  if (!opened.ok) throw problemsAsMistake(opened.problems);
  const study = await scenarioStudy(opened, runner, { ...options, watch: DAYS_WATCHED });
  const answer =
    printed.allowingForInputs === undefined
      ? study.answer
      : await withInputs({ opened, runner }, study.answer);
  const whole =
    habits === undefined ? answer : await withHabits({ opened, runner }, answer, FEW_HABIT_DAYS);
  const found = { answer, curves: riskCurves(answer, study.risk), habits: whole.habits };
  const asked = {
    fileName,
    text,
    options,
    look: given.look ?? { units: 'metric' as const, locale: null },
  };
  const context = contextFor(opened, asked, given.version, answer);
  const told = {
    ...writtenParts(
      answer,
      context,
      given.version,
      made === undefined ? undefined : madeSentence(made),
    ),
    tight: await tightPart(opened, answer, context, asked),
    ...(await picturedParts(
      opened,
      answer,
      found.curves,
      context,
      given.version,
      runner,
      whole.habits,
    )),
  };
  return {
    version: given.version,
    seed: answer.seed,
    values: countValues(plain(found)),
    parts: LETTER_PARTS.length,
    differences: [
      ...valueDifferences({ answer: printed, curves, habits }, plain(found)),
      ...LETTER_PARTS.flatMap((part) =>
        wordDifferences(parts[part] ?? '', told[part] ?? '', `letter, part "${part}"`),
      ),
    ],
  };
}
