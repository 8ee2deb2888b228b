/**
 * What a question can be asked with, as data. The command line makes its options from it and the page its controls,
 * and both read what a person types with the same function.
 */
import { isDate } from '../ordering/dates.js';
import { lengthUnits, parseWithUnit } from '../quantities/unit-tables.js';

/** A file that a person hands over. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

interface Values {
  /** 0..1, exclusive. */
  readonly share: number;
  readonly whole: number;
  readonly word: string;
  /** mm. */
  readonly length: number;
  /** `YYYY-MM-DD`. */
  readonly day: string;
  readonly flag: boolean;
  /** Pieces by id of ware. */
  readonly pieces: Readonly<Record<string, number>>;
  readonly wholes: readonly number[];
  /** Each 0..1, 1 left out. */
  readonly shares: readonly number[];
  readonly file: GivenFile;
  /** The option may be given several times, a file each. */
  readonly files: readonly GivenFile[];
}

export interface Setting {
  /** One line of help. */
  readonly describe: string;
  readonly as: keyof Values;
  readonly required?: boolean;
  /** Bounds of `whole` and `wholes`. */
  readonly from?: number;
  readonly to?: number;
  /** Most bytes of a `file`, or of each of `files`. */
  readonly most?: number;
  /** Of use in a terminal alone: no control in the page. */
  readonly only?: 'text';
}

export type Settings = Readonly<Record<string, Setting>>;
export type Value = Values[keyof Values];

/** Paths of `files` as typed, one a line. */
export const pathsOf = (typed: string): string[] => typed.split('\n');

/** All files among what was given, by name of the setting. */
export const filesAmong = (given: Readonly<Record<string, unknown>>): [string, GivenFile][] =>
  Object.entries(given).flatMap(([name, value]) =>
    [value]
      .flat()
      .flatMap((one): [string, GivenFile][] =>
        typeof one === 'object' && one !== null && 'bytes' in one ? [[name, one as GivenFile]] : [],
      ),
  );

/** What was given, by name of the setting. */
export type Given<S extends Settings> = {
  readonly [K in keyof S]?: Values[S[K]['as']] | undefined;
};

/** What is wrong with what a person typed: a rule and a remedy in one clause. */
export class SettingError extends Error {
  override readonly name = 'SettingError';

  /** @param setting which one, where only the question itself can know that it does not fit */
  constructor(
    message: string,
    readonly setting: string | null = null,
  ) {
    super(message);
  }
}

/** Every random stream is begun from the whole seed. */
const MOST_IN_WORD = 200;

/**
 * What a person typed, as the setting's value.
 * @throws SettingError with the value, the rule and the remedy
 */
export function parseSetting(
  setting: Setting,
  text: string,
): Exclude<Value, GivenFile | readonly GivenFile[]> {
  const typed = text.trim();
  switch (setting.as) {
    case 'share':
      return parseShare(typed);
    case 'whole':
      return parseWhole(typed, setting);
    case 'wholes':
      return typed.split(',').map((one) => parseWhole(one.trim(), setting));
    case 'shares':
      return typed.split(',').map((one) => parsePercent(one.trim()));
    case 'length':
      return parseLength(typed);
    case 'day':
      if (!isDate(typed)) throw new SettingError(`"${typed}" is not a day; write it as 2027-03-31`);
      return typed;
    case 'pieces':
      return parsePieces(typed);
    case 'flag':
      return typed !== 'no' && typed !== 'false';
    case 'word':
      if (typed.length > MOST_IN_WORD)
        throw new SettingError(
          `has ${typed.length.toLocaleString('en')} characters; give at most ${MOST_IN_WORD}`,
        );
      if (typed === '') throw new SettingError('is empty; give a value');
      return typed;
    case 'file':
    case 'files':
      if (typed === '') throw new SettingError('is empty; give a value');
      return typed;
  }
}

/** `0.95`, `95`, `95%` and `95 %` are the same share. */
function parseShare(text: string): number {
  const match = /^(\d+(?:\.\d+)?)\s*(%?)$/.exec(text);
  const number = match === null ? NaN : Number(match[1]);
  const share = match?.[2] === '%' || number > 1 ? number / 100 : number;
  if (!(share > 0 && share < 1))
    throw new SettingError(
      `"${text}" is not a share between 0 and 100 %, both left out; write 0.95 or 95%`,
    );
  return share;
}

/**
 * Settings as somebody typed them in boxes; an empty box says nothing.
 * @throws SettingError, every line with the box it is about
 */
export function settingsTyped<S extends Settings>(
  settings: S,
  typed: Readonly<Record<string, string>>,
): Given<S> {
  const wrong: string[] = [];
  const given = Object.entries(typed).flatMap(([name, text]) => {
    if (text.trim() === '') return [];
    try {
      return [[name, parseSetting(settings[name]!, text)] as const];
    } catch (error) {
      if (!(error instanceof SettingError)) throw error;
      wrong.push(error.message);
      return [];
    }
  });
  if (wrong.length > 0) throw new SettingError(wrong.join('\n'));
  return Object.fromEntries(given) as Given<S>;
}

/** `30` and `30 %` are the same share: in a list of percent a bare number is one. */
function parsePercent(text: string): number {
  const match = /^(\d{1,3}(?:\.\d+)?)\s*%?$/.exec(text);
  const share = match === null ? NaN : Number(match[1]) / 100;
  if (!(share < 1))
    throw new SettingError(
      `"${text}" is not a percentage from 0 to below 100; write one such as 30 or 30%`,
    );
  return share;
}

function parseWhole(text: string, { as, from = 0, to = Number.MAX_SAFE_INTEGER }: Setting): number {
  const number = /^\d{1,15}$/.test(text.replace(/(?<=\d),(?=\d{3}\b)/g, ''))
    ? Number(text.replaceAll(',', ''))
    : NaN;
  if (!(number >= from && number <= to))
    throw new SettingError(
      `"${text}" is not a whole number from ${from.toLocaleString('en')} to ${to.toLocaleString('en')}; write ${as === 'wholes' ? 'them with commas between: 20,30' : `one such as ${Math.max(from, Math.min(to, 1000))}`}`,
    );
  return number;
}

/** `90 cm`, in mm. */
function parseLength(text: string): number {
  const read = parseWithUnit(text, lengthUnits);
  if (read.ok) return read.value;
  throw new SettingError(`"${text}" ${read.rule}; ${read.remedy}`);
}

/** `cup=40,saucer=60` → { cup: 40, saucer: 60 }. */
function parsePieces(text: string): Record<string, number> {
  const pieces = new Map<string, number>();
  const problems: string[] = [];
  for (const part of text.split(',').map((one) => one.trim())) {
    const [id = '', count = '', ...rest] = part.split('=').map((one) => one.trim());
    if (id === '' || rest.length > 0 || !/^\d{1,7}$/.test(count))
      problems.push(`"${part}" is not an item and a whole number of pieces; write cup=40`);
    else if (pieces.has(id)) problems.push(`"${id}" is given twice; give it once`);
    else pieces.set(id, Number(count));
  }
  if (problems.length > 0) throw new SettingError(problems.join('\n'));
  return Object.fromEntries(pieces);
}

/** Settings that size a stock, shared by the questions that do so. */
export const sizing = {
  level: {
    as: 'share',
    describe: 'Share of rushes in which nothing may run out, such as 0.95 or 95%',
  },
  seed: { as: 'word', describe: 'Word or number that the random days are drawn from' },
  days: {
    as: 'whole',
    from: 1,
    to: 1_000_000,
    describe: 'Number of days to choose the stock on, instead of as many as it takes',
  },
} as const satisfies Settings;

/** Of a stock that is ordered or written about: the plain one, or the one that allows for what is not known. */
export const allowingForInputs = {
  'allow-for-inputs': {
    as: 'flag',
    only: 'text',
    describe:
      'Allow for inputs that are not known exactly: the stock that holds the level wherever they lie in their ranges',
  },
} as const satisfies Settings;

export const orderDay = {
  as: 'day',
  describe: 'Day of the order, YYYY-MM-DD; else that of the scenario, else today',
} as const satisfies Setting;
