/** What an answer was made from, as the command knows it. */
import { basename } from 'node:path';
import { commandText, type Made } from '../questions/made.js';
import { filesAmong, pathsOf, type Settings, type Value } from '../questions/settings.js';
import { version } from './version.js';

/** To import the module would load much more of Node than the digest: 6 ms at every start. */
export const sha256 = (content: string | Uint8Array): string =>
  process.getBuiltinModule('node:crypto').createHash('sha256').update(content).digest('hex');

/** A setting whose text is paths. */
export const namesFiles = (settings: Settings, name: string): boolean =>
  settings[name]?.as === 'file' || settings[name]?.as === 'files';

export interface MadeOf {
  readonly question: string;
  readonly settings: Settings;
  /** As typed, by name. */
  readonly typed: Readonly<Record<string, string>>;
  readonly given?: Readonly<Record<string, Value | undefined>>;
  /** Path of the scenario, its text and the seed that it names. */
  readonly file: string;
  readonly text: string;
  readonly seed: string;
  /** Files that the scenario names, by name. */
  readonly beside?: Readonly<Record<string, Uint8Array>>;
}

export function madeOf(of: MadeOf): Made {
  const { question, settings, typed, given = {}, file, text, seed, beside = {} } = of;
  const named = Object.fromEntries(
    Object.entries(typed).map(([name, value]) => [
      name,
      namesFiles(settings, name)
        ? pathsOf(value)
            .map((path) => basename(path))
            .join('\n')
        : value,
    ]),
  );
  const files = [
    ...filesAmong(given).map(([, { name, bytes }]) => ({
      name: basename(name),
      sha256: sha256(bytes),
    })),
    ...Object.entries(beside).map(([name, bytes]) => ({ name, sha256: sha256(bytes) })),
  ];
  return {
    version,
    command: commandText(question, basename(file), named),
    seed: named['seed'] ?? seed,
    question,
    settings: named,
    scenario: { file: basename(file), sha256: sha256(text) },
    ...(files.length === 0 ? {} : { files }),
  };
}

/** With settings that nobody typed and that the answer rests on, so that the command gives it on any other day. */
export function withFilledIn(made: Made, filledIn: Readonly<Record<string, string>> = {}): Made {
  const settings = { ...made.settings, ...filledIn };
  const { question, scenario } = made;
  return { ...made, command: commandText(question, scenario.file, settings), settings };
}

/** An answer that says what it was made from; it stands last. */
export const withMade = <T>(answer: T, made: Made): T & { readonly made: Made } => ({
  ...answer,
  made,
});
