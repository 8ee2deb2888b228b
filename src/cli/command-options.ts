/** What a command takes, read from its builder without the option parser: the same description serves the parser, its help and our own checks. */
import type { Argv, CommandModule } from 'yargs';
import { questions } from '../questions/list.js';

export interface CommandOptions {
  readonly name: string;
  /** The file it is about; null: it takes none. */
  readonly file: { readonly name: string; readonly needed: boolean } | null;
  /** By name. */
  readonly options: ReadonlyMap<string, OptionForm>;
}

interface OptionForm {
  /** It takes no value. */
  readonly isFlag: boolean;
  readonly needed: boolean;
  /** What it is, as the help has it. */
  readonly about: string;
  /** It may be given more than once. */
  readonly isList: boolean;
}

interface Spec {
  readonly type?: string;
  readonly demandOption?: boolean | string;
  readonly describe?: string;
}

/** Options that every command has. */
const COMMON: readonly (readonly [string, Spec])[] = [
  ['help', { type: 'boolean' }],
  ['version', { type: 'boolean' }],
];

export function optionsOf({ command, builder }: CommandModule): CommandOptions {
  const [, name = '', bracket = '', file = ''] =
    /^(\S+)(?: (.)(.+).)?$/.exec(String(command)) ?? [];
  const specs = new Map<string, Spec>(COMMON);
  const recorder = {
    positional: () => recorder,
    option: (option: string, spec: Spec) => {
      specs.set(option, spec);
      return recorder;
    },
    options: (all: Readonly<Record<string, Spec>>) => {
      for (const [option, spec] of Object.entries(all)) specs.set(option, spec);
      return recorder;
    },
  };
  const settings = questions.find((one) => one.name === name)?.settings ?? {};
  if (typeof builder === 'function') void builder(recorder as unknown as Argv);
  return {
    name,
    file: file === '' ? null : { name: file, needed: bracket === '<' },
    options: new Map(
      [...specs].map(([option, { type, demandOption, describe = '' }]) => [
        option,
        {
          isFlag: type === 'boolean',
          needed: demandOption === true,
          about: describe,
          isList: Object.hasOwn(settings, option) && settings[option]!.as === 'files',
        },
      ]),
    ),
  };
}
