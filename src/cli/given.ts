/** The arguments as they were given: what the option parser would let pass or say in its own words is refused here, all at once. */
import { didYouMean, nearest } from '../quantities/nearest.js';
import { shorten } from '../tell/clean-text.js';
import type { CommandOptions } from './command-options.js';
import { MistakeError } from './mistakes.js';

/** A number with a sign is a value; anything else that begins with a hyphen is an option. */
const SIGNED = /^-(\d+(\.\d+)?|\.\d+)$/;
const isOption = (word: string): boolean => /^-./.test(word) && !SIGNED.test(word);
const quoted = (word: string): string => `"${shorten(word, 60)}"`;

/**
 * Arguments for the option parser. What follows `--` is a file, even if it begins with a hyphen.
 * @throws MistakeError with everything that is wrong with their form: unknown commands and options, options given twice or
 * without a value, flags with one, too many files or none
 */
export function checkGiven(
  given: readonly string[],
  commands: readonly { readonly name: string; readonly options: () => CommandOptions }[],
): string[] {
  const end = given.indexOf('--');
  const before = end < 0 ? given : given.slice(0, end);
  const files = end < 0 ? [] : given.slice(end + 1);
  const parsed = [...before, ...files.map((file) => (file.startsWith('-') ? `./${file}` : file))];
  if (before.some((word) => word === '--help' || word === '--version')) return parsed;
  const names = commands.map(({ name }) => name);
  const at = before.findIndex((word) => names.includes(word));
  const word = before[at < 0 ? 0 : at];
  if (word === undefined) throw new MistakeError('Name a command; cuptide --help lists them.');
  if (at < 0 && isOption(word))
    throw new MistakeError(
      `${quoted(word)}: name the command first, such as cuptide size FILE; cuptide --help lists them`,
    );
  if (at < 0)
    throw new MistakeError(
      `${quoted(word)} is not a command; ${didYouMean(word, names)}\nSee cuptide --help.`,
    );
  const command = commands[names.indexOf(word)]!.options();
  const rest = [...before.slice(0, at), ...before.slice(at + 1)];
  const mistakes = mistakesOf(rest, files, command, (option) =>
    commands.filter(({ options }) => options().options.has(option)).map(({ name }) => name),
  );
  if (mistakes.length > 0) throw new MistakeError(mistakes.join('\n'));
  return [word, ...parsed.filter((_, place) => place !== at)];
}

function mistakesOf(
  words: readonly string[],
  filesAfter: readonly string[],
  { name, file, options }: CommandOptions,
  takenBy: (option: string) => readonly string[],
): string[] {
  const mistakes: string[] = [];
  const times = new Map<string, number>();
  const files: string[] = [];
  const known = [...options.keys()];
  for (let place = 0; place < words.length; place += 1) {
    const word = words[place]!;
    const next = words[place + 1];
    if (!isOption(word)) {
      files.push(word);
      continue;
    }
    const [, option = '', value] = /^--([^=]+)(?:=([^]*))?$/.exec(word) ?? [];
    const about = options.get(option);
    if (about === undefined) {
      mistakes.push(unknown(word, name, known, takenBy));
      // What follows was meant for it, unless it is the only file.
      const loose = words.slice(place + 2).some((one) => !isOption(one)) || files.length > 0;
      if (!word.includes('=') && next !== undefined && !isOption(next) && loose) place += 1;
      continue;
    }
    times.set(option, (times.get(option) ?? 0) + 1);
    if (about.isFlag) {
      if (value !== undefined && value !== 'true' && value !== 'false')
        mistakes.push(
          `--${option} takes no value, and ${quoted(value)} was given; write --${option} alone, or leave it out`,
        );
      else if (value === undefined && (next === 'true' || next === 'false')) place += 1;
    } else if (value === undefined) {
      if (next === undefined || isOption(next)) mistakes.push(noValue(option, next));
      else place += 1;
    }
  }
  for (const [option, count] of times)
    if (count > 1 && !options.get(option)!.isList)
      mistakes.push(`--${option} is given twice; give it once`);
  files.push(...filesAfter);
  if (file?.needed === true && files.length === 0)
    mistakes.push(`Name the ${file.name}: cuptide ${name} ${file.name.toUpperCase()}`);
  for (const extra of files.slice(file === null ? 0 : 1))
    mistakes.push(
      file === null
        ? `${quoted(extra)}: ${name} takes no file; leave it out`
        : `${quoted(extra)} is one too many: ${name} takes one ${file.name}; put a name or value with blanks in quotes`,
    );
  for (const [option, { needed, about }] of options)
    if (needed && !times.has(option)) mistakes.push(`--${option} is needed: ${about}`);
  return mistakes;
}

/** An option without its value. */
function noValue(option: string, next: string | undefined): string {
  const hyphen =
    next !== undefined && !/^--\w/.test(next)
      ? `; one that begins with a hyphen follows an equals sign, --${option}=${shorten(next, 60)}`
      : '';
  return `--${option} needs a value${hyphen}`;
}

/** An option that this command does not have. @param takenBy commands that have it */
function unknown(
  word: string,
  command: string,
  known: readonly string[],
  takenBy: (option: string) => readonly string[],
): string {
  const typed = /^-*([^=]*)/.exec(word)![1]!;
  const shown = shorten(typed === '' ? word : word.split('=')[0]!, 60);
  const isNot = `${shown} is not an option of ${command}`;
  const positive = typed.replace(/^no-/, '');
  if (positive !== typed && known.includes(positive)) return `${isNot}; leave out --${positive}`;
  const others = known.includes(typed) ? [] : takenBy(typed);
  const near = others.length > 0 ? null : nearest(typed.split('.')[0]!, known);
  if (near !== null) return `${isNot}; did you mean --${near}?`;
  if (!word.startsWith('--') && others.length === 0)
    return `${isNot}; before a file whose name begins with a hyphen write --`;
  const elsewhere =
    others.length === 0
      ? ''
      : ` but of ${others.slice(0, 3).join(', ')}${others.length > 3 ? ' and others' : ''}`;
  return `${isNot}${elsewhere}; cuptide ${command} --help lists those it has`;
}

/** What the option parser says, as we say it. */
export function inPlainWords(message: string): string {
  const [, value, option, choices] =
    /Argument: (.+), Given: "(.*)", Choices: (.+)/.exec(message)?.slice(0) ?? [];
  return value === undefined
    ? message
    : `--${value}: "${option}" is not one of ${choices!.replaceAll('"', '')}`;
}
