/** The answers of a starter read together: each after those before it, all that is wrong at once. */
import { currencyIn, took, type Read } from './starter-answers.js';
import {
  questionKeys,
  questions,
  type QuestionKey,
  type Served,
  type SoFar,
  type StarterAnswers,
} from './starter-questions.js';

/** Read the answer to one question after those before it; `shown` is how it was understood. */
export function readAnswer<K extends QuestionKey>(
  key: K,
  text: string,
  soFar: SoFar,
  served: Served = {},
): Read<{ readonly value: StarterAnswers[K]; readonly shown: string }> {
  const { read, show } = questions[key];
  const answer = read(text, soFar, served);
  return answer.ok ? took({ value: answer.value, shown: show(answer.value) }) : answer;
}

export interface AllAnswers {
  /** Every answer as a text: what was given, else the usual. */
  readonly texts: Readonly<Record<QuestionKey, string>>;
  /** Why an answer cannot be taken, by question. */
  readonly wrong: Readonly<Partial<Record<QuestionKey, string>>>;
  /** All values, where nothing is wrong. */
  readonly answers: StarterAnswers | null;
}

/** The answers given; an amount such as £14 answers which currency too, unless that was answered. */
export function withCurrencyNamed(
  given: Readonly<Partial<Record<QuestionKey, string>>>,
): Readonly<Partial<Record<QuestionKey, string>>> {
  if (given.currency !== undefined) return given;
  const currency = currencyIn(given.staffHour ?? '') ?? currencyIn(given.cupPrice ?? '');
  return currency === null ? given : { ...given, currency };
}

/** All answers, those that are not given taken as usual. */
export function readAll(
  told: Readonly<Partial<Record<QuestionKey, string>>>,
  served: Served = {},
): AllAnswers {
  const given = withCurrencyNamed(told);
  const texts: Partial<Record<QuestionKey, string>> = {};
  const wrong: Partial<Record<QuestionKey, string>> = {};
  const values: Partial<Record<QuestionKey, unknown>> = {};
  for (const key of questionKeys) {
    const soFar = values as SoFar;
    const text = given[key] ?? questions[key].usual(soFar) ?? '';
    const read = readAnswer(key, text, soFar, served);
    texts[key] = text;
    if (read.ok) values[key] = read.value.value;
    else wrong[key] = read.why;
  }
  return {
    texts: texts as Record<QuestionKey, string>,
    wrong,
    answers: Object.keys(wrong).length > 0 ? null : (values as unknown as StarterAnswers),
  };
}
