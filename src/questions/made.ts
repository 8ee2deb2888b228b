/**
 * What an answer was made from, carried with it, so that anybody can make it again and see whether every number
 * matches (`cuptide verify`). It holds nothing that changes from run to run: no time, host or folder.
 */
export interface Made {
  readonly version: string;
  /** To type again in the folder of the scenario; without what does not change the answer. */
  readonly command: string;
  readonly seed: string;
  /** Name of the command. */
  readonly question: string;
  /** Settings as typed, by name; of files, their names without folders, a line each. */
  readonly settings: Readonly<Record<string, string>>;
  readonly scenario: MadeFrom;
  /** Other files that were read, in order. */
  readonly files?: readonly { readonly name: string; readonly sha256: string }[];
}

/** The scenario: its name, and either itself or its digest (SHA-256 of its bytes, in hexadecimal). */
export type MadeFrom =
  | { readonly file: string; readonly sha256: string }
  | { readonly file: string; readonly text: string };

const PLAIN = /^[\w.,=:%@+/-]+$/;
const quoted = (word: string): string => (PLAIN.test(word) ? word : JSON.stringify(word));

/** `cuptide size cafe.yaml --days 300` */
export const commandText = (
  question: string,
  file: string,
  settings: Readonly<Record<string, string>>,
): string =>
  [
    'cuptide',
    question,
    quoted(file),
    ...Object.entries(settings).flatMap(([name, value]) =>
      value === 'true'
        ? [`--${name}`]
        : value.split('\n').flatMap((one) => [`--${name}`, quoted(one)]),
    ),
  ].join(' ');

const DATA = 'For cuptide verify';

/** A line each, for people; the last one is all of it as JSON. */
export function madeRows(made: Made): (readonly [what: string, text: string])[] {
  const { version, command, seed, scenario } = made;
  return [
    ['Made by', `cuptide ${version}`],
    ['Command', command],
    ['Seed', seed],
    ['Scenario file', scenario.file],
    ...('sha256' in scenario ? [['SHA-256 of it', scenario.sha256] as const] : []),
    [DATA, JSON.stringify(made)],
  ];
}

/** The JSON of `madeRows`, from the rows of a workbook; undefined where there is none. */
export const madeData = (rows: readonly (readonly unknown[])[]): unknown =>
  rows.find(([what]) => what === DATA)?.[1];

/** Signs of a digest that are printed; data carry all 64. */
const SHOWN = 16;

/** What is printed at the end of a letter or an order. */
export const madeSentence = ({ command, scenario }: Made): string =>
  `Command: ${command}.${'sha256' in scenario ? ` Scenario file: SHA-256 ${scenario.sha256.slice(0, SHOWN)}….` : ''}`;

/** The same where version and seed are printed nowhere else. */
export const madeInFull = (made: Made): string =>
  `Made by cuptide ${made.version}, seed ${made.seed}. ${madeSentence(made)}`;
