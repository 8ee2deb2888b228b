/** A duration law, or a list of rates, made longer or larger by a factor, in the text of its box. */

const NUMBER_WITH_UNIT = /(\d+(?:\.\d+)?)(\s*(?:ms|s|min|h)\b)/g;
const NUMBER = /\d+(?:\.\d+)?/g;

/** Four significant digits: what is written stays readable. */
const times = (number: string, factor: number): string =>
  String(Number((Number(number) * factor).toPrecision(4)));

/** Every duration in the text, times the factor: "{ lognormal: { mean: 19 min, sd: 9 min } }" scales its spread too. */
export const scaledDurations = (text: string, factor: number): string =>
  text.replace(NUMBER_WITH_UNIT, (_, number: string, unit: string) => times(number, factor) + unit);

/** The first number of each item of a list of rates, times the factor. */
export const scaledNumbers = (text: string, factor: number): string =>
  text.replace(NUMBER, (number) => times(number, factor));
