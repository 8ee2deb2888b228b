/** Options that size a stock, shared by the commands that do so. */
import type { Argv } from 'yargs';
import { MistakeError } from './mistakes.js';

/** @param which all options, or only those of sizing (no given stock, no listed days) */
export function studyOptions<T>(yargs: Argv<T>, which: 'all' | 'sizing' = 'all') {
  const sizing = yargs
    .option('level', {
      type: 'number',
      describe: 'Share of rushes in which nothing may run out, such as 0.95',
      coerce: (level?: number) =>
        inside(
          'level',
          level,
          (value) => value > 0 && value < 1,
          'a share between 0 and 1, such as 0.95',
        ),
    })
    .option('seed', {
      type: 'string',
      describe: 'Word or number that the random days are drawn from',
      requiresArg: true,
    })
    .option('days', {
      type: 'number',
      describe: 'Number of days to choose the stock on, instead of as many as it takes',
      coerce: (days?: number) =>
        inside(
          'days',
          days,
          (value) => Number.isInteger(value) && value >= 1 && value <= 1_000_000,
          'a whole number from 1 to 1,000,000',
        ),
    })
    .option('threads', {
      type: 'number',
      describe: 'Threads to run days on; the answer is the same',
      coerce: (threads?: number) =>
        inside(
          'threads',
          threads,
          (value) => Number.isInteger(value) && value >= 1 && value <= 64,
          'a whole number from 1 to 64',
        ),
    });
  if (which === 'sizing') return sizing;
  return sizing
    .option('stock', {
      type: 'string',
      describe: 'Turn the question round: how safe is this stock? Such as cup=40,saucer=60',
      requiresArg: true,
    })
    .option('day', {
      type: 'string',
      describe: 'File of listed days (JSON) in place of drawn ones',
      requiresArg: true,
    });
}

export function inside(
  name: string,
  value: number | undefined,
  fits: (value: number) => boolean,
  rule: string,
): number | undefined {
  if (value === undefined) return undefined;
  if (!Number.isFinite(value) || !fits(value)) throw new MistakeError(`--${name} is not ${rule}`);
  return value;
}

/** cup=40,saucer=60 → { cup: 40, saucer: 60 }; `option` names the option in messages. */
export function parseStock(
  text: string,
  ware: readonly string[],
  option = 'stock',
): Record<string, number> {
  const stock: Record<string, number> = {};
  const problems: string[] = [];
  for (const part of text.split(',').map((one) => one.trim())) {
    const [id = '', count = '', ...rest] = part.split('=').map((one) => one.trim());
    if (id === '' || rest.length > 0 || !/^\d{1,7}$/.test(count))
      problems.push(
        `--${option}: "${part}" is not a ware and a whole number of pieces; write cup=40`,
      );
    else if (!ware.includes(id))
      problems.push(`--${option}: "${id}" is no ware of this scenario; it has ${ware.join(', ')}`);
    else if (Object.hasOwn(stock, id)) problems.push(`--${option}: "${id}" is given twice`);
    else stock[id] = Number(count);
  }
  if (problems.length > 0) throw new MistakeError(problems.join('\n'));
  return stock;
}
