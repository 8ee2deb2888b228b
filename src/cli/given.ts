/** The arguments as they were given: what the option parser would let pass or say in its own words. */
import { didYouMean } from '../quantities/nearest.js';
import { questions } from '../questions/list.js';
import { MistakeError } from './mistakes.js';

/**
 * Arguments for the option parser. What follows `--` is a file, even if it begins with a hyphen.
 * @throws MistakeError for an unknown command, and for options given twice, of which the parser would take one silently
 */
export function checkGiven(given: readonly string[], known: readonly string[]): string[] {
  const [word] = given;
  if (word !== undefined && !word.startsWith('-') && !known.includes(word))
    throw new MistakeError(
      `"${word}" is not a command; ${didYouMean(word, known)}\nSee cuptide --help.`,
    );
  const end = given.indexOf('--');
  const before = end < 0 ? given : given.slice(0, end);
  const options = before.filter((one) => /^--\w/.test(one)).map((one) => one.split('=')[0]!);
  const settings = questions.find(({ name }) => name === word)?.settings ?? {};
  const twice = [...new Set(options.filter((one, i) => options.indexOf(one) !== i))].filter(
    (option) => settings[option.slice(2)]?.as !== 'files',
  );
  if (twice.length > 0)
    throw new MistakeError(
      twice.map((option) => `${option} is given twice; give it once`).join('\n'),
    );
  const files = end < 0 ? [] : given.slice(end + 1);
  return [...before, ...files.map((file) => (file.startsWith('-') ? `./${file}` : file))];
}

/**
 * What is wrong with flags that were given a value: the parser takes every word but "true" for "not given".
 * @param flags options that take no value
 */
export function flagMistakes(given: readonly string[], flags: readonly string[]): string[] {
  const end = given.indexOf('--');
  return (end < 0 ? given : given.slice(0, end)).flatMap((one) => {
    const [, name = '', value = ''] = /^--([\w-]+)=([^]*)$/.exec(one) ?? [];
    if (!flags.includes(name) || value === 'true' || value === 'false') return [];
    return [
      `--${name} takes no value, and "${value}" was given; write --${name} alone, or leave it out`,
    ];
  });
}

/** What the option parser says, as we say it. */
export function inPlainWords(message: string): string {
  const needsValue = /^Not enough arguments following: (.+)$/.exec(message)?.[1];
  if (needsValue !== undefined) return `--${needsValue} needs a value`;
  if (message.startsWith('Not enough non-option arguments')) return 'Name the file';
  const needed = /^Missing required arguments?: (.+)$/.exec(message)?.[1]?.split(', ');
  if (needed !== undefined) return needed.map((one) => `--${one} is needed`).join('\n');
  const unknown = /^Unknown arguments?: (.+)$/.exec(message)?.[1]?.split(', ');
  if (unknown === undefined) return message;
  // Options with a hyphen come in two spellings.
  const spelt = unknown.filter(
    (one) => !unknown.some((other) => other !== one && camel(other) === one),
  );
  return spelt.map((one) => `"${one}" is not known to this command`).join('\n');
}

const camel = (text: string): string =>
  text.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
