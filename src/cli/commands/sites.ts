/** cuptide sites: a table of sites, sized and ordered for together; in parts where one machine is not enough. */
import type { CommandModule } from 'yargs';
import { orderDay } from '../../questions/settings.js';
import { MistakeError } from '../mistakes.js';
import { parsed } from '../parsed.js';
import { studyOptions, wholeOf } from '../study-options.js';

const MOST_PARTS = 1_000_000;
const MOST_DRAWS = 10_000;

interface Arguments {
  readonly table: string;
  readonly base: string;
  readonly level?: number;
  readonly seed?: string;
  readonly days?: number;
  readonly threads?: number;
  readonly date?: string;
  readonly spares: 'sites' | 'drop';
  readonly letter?: string;
  readonly compare: boolean;
  readonly draws?: number;
  readonly measure: boolean;
  readonly out?: string;
  readonly json: boolean;
  readonly all: boolean;
  readonly part?: string;
  readonly index?: number;
  readonly parts?: number;
  readonly merge: boolean;
  readonly wait?: number;
  readonly estimate: boolean;
}

export const sites: CommandModule<object, Arguments> = {
  command: 'sites <table>',
  describe: 'A table of sites: the stock of each, one order for all, spares, when to order what',
  builder: (yargs) =>
    studyOptions(
      yargs.positional('table', {
        type: 'string',
        demandOption: true,
        describe:
          'Table of sites (CSV or XLSX): id, name, seats, guests, stay or takeaway, dwell, hours, machines, makers, clearers, have, drop, opening, till with map, or any path of the scenario',
      }),
    )
      .option('base', {
        type: 'string',
        demandOption: true,
        requiresArg: true,
        describe: 'Scenario that each site starts from (YAML or JSON)',
      })
      .option('date', {
        type: 'string',
        requiresArg: true,
        describe: orderDay.describe,
        coerce: (date?: string) =>
          date === undefined ? undefined : parsed('date', orderDay, date),
      })
      .option('spares', {
        choices: ['sites', 'drop'],
        default: 'sites',
        describe: 'Where spares are kept: at each site, or at the drop for all its sites',
      })
      .option('letter', {
        type: 'string',
        requiresArg: true,
        describe: 'Also write the letters of these sites, such as harbour,station; or all',
      })
      .option('compare', {
        type: 'boolean',
        default: false,
        describe: 'Instead of sizes and an order: the alternatives of the base at every site',
      })
      .option('draws', {
        type: 'string',
        requiresArg: true,
        describe: 'Instead: the sum over this many draws of the uncertain inputs, such as 200',
        coerce: (draws?: string) => wholeOf('draws', draws, 1, MOST_DRAWS),
      })
      .option('measure', {
        type: 'boolean',
        default: false,
        describe: 'Instead: at which site a morning of measuring is worth most',
      })
      .option('out', {
        type: 'string',
        requiresArg: true,
        describe: 'Folder to write files to; of parts, the folder they are kept in',
      })
      .option('json', {
        type: 'boolean',
        default: false,
        describe: 'Print the answer as one JSON object',
      })
      .option('all', { type: 'boolean', default: false, describe: 'Print the details too' })
      .option('part', {
        type: 'string',
        requiresArg: true,
        describe: 'Run only this part of the sites, such as 3/1000, into --out',
      })
      .option('index', {
        type: 'string',
        requiresArg: true,
        describe: 'As --part, but counted from 0: --index 2 --parts 1000',
        coerce: (index?: string) => wholeOf('index', index, 0, MOST_PARTS),
      })
      .option('parts', {
        type: 'string',
        requiresArg: true,
        describe: 'Number of parts, for --index, --merge and --estimate',
        coerce: (parts?: string) => wholeOf('parts', parts, 1, MOST_PARTS),
      })
      .option('merge', {
        type: 'boolean',
        default: false,
        describe: 'Put the parts in --out together; names those that are missing (exit code 3)',
      })
      .option('wait', {
        type: 'string',
        requiresArg: true,
        describe:
          'With --merge: seconds to look again for parts, as network folders show them late',
        coerce: (wait?: string) => wholeOf('wait', wait, 0, 3600),
      })
      .option('estimate', {
        type: 'boolean',
        default: false,
        describe: 'Check the table, run a few sites, and say how long all will take',
      }) as never,
  async handler(args) {
    const part = partIn(args);
    checkTogether(args, part !== null);
    const { table, base, level, days, seed, date, spares, threads, json, all, out } = args;
    const given = {
      table,
      base,
      level,
      days,
      seed,
      date,
      spares,
      threads,
      json,
      all,
      out,
      letters: args.letter?.split(',').map((id) => id.trim()) ?? [],
      asked: { compare: args.compare, draws: args.draws ?? 0, measure: args.measure },
    };
    if (part !== null) {
      const { runPart } = await import('../sites/run-part.js');
      await runPart(given, part, args.out!);
    } else if (args.merge) {
      const { runMerge } = await import('../sites/run-merge.js');
      await runMerge(given, { folder: args.out!, of: args.parts, wait: args.wait ?? 0 });
    } else if (args.estimate) {
      const { runEstimate } = await import('../sites/run-estimate.js');
      await runEstimate(given, args.parts);
    } else {
      const { runSites } = await import('../run-sites.js');
      await runSites(given);
    }
  },
};

/** `3/1000`, or an index from 0 and the number of parts: the number is always given, as engines count only what they run. */
function partIn({ part, index, parts }: Arguments): { part: number; of: number } | null {
  if (part !== undefined) {
    const found = /^(\d{1,7})\/(\d{1,7})$/.exec(part.trim());
    const [own, of] = [Number(found?.[1]), Number(found?.[2])];
    if (!(own >= 1 && own <= of && of <= MOST_PARTS))
      throw new MistakeError(
        `--part: "${part}" is no part of a number of parts; write one such as 3/1000, from 1/1000 to 1000/1000`,
      );
    return { part: own, of };
  }
  if (index === undefined) return null;
  if (parts === undefined) throw new MistakeError('--index needs --parts, such as --parts 1000');
  if (index >= parts)
    throw new MistakeError(
      `--index: "${index}" is past the last of ${parts} parts, which count from 0; write one up to ${parts - 1}`,
    );
  return { part: index + 1, of: parts };
}

/** What cannot go together. @throws MistakeError with all of it */
function checkTogether(args: Arguments, part: boolean): void {
  const { merge, estimate, out, letter, index, parts, wait, compare, draws, measure } = args;
  const wrong: string[] = [];
  if ([part, merge, estimate].filter(Boolean).length > 1)
    wrong.push('--part (or --index), --merge and --estimate are different work; give one of them');
  if (args.part !== undefined && index !== undefined)
    wrong.push('--part and --index say the same; give one of them');
  if (args.part !== undefined && parts !== undefined)
    wrong.push('--part says the number of parts itself; leave out --parts');
  if ((part || merge) && out === undefined)
    wrong.push(`--${part ? 'part' : 'merge'} needs --out, the folder of the parts`);
  if (letter !== undefined && (out === undefined || part || estimate))
    wrong.push('--letter needs --out and the whole answer; leave it out, or name a folder');
  const across = compare || measure || draws !== undefined;
  for (const [name, given] of [
    ['letter', letter !== undefined],
    ['date', args.date !== undefined],
    ['spares', args.spares === 'drop'],
  ] as const)
    if (across && given)
      wrong.push(
        `--${name} belongs to sizes and order; leave it out with --compare, --draws or --measure`,
      );
  if (parts !== undefined && !part && !merge && !estimate)
    wrong.push('--parts belongs to --index, --merge or --estimate; leave it out');
  if (wait !== undefined && !merge) wrong.push('--wait belongs to --merge; leave it out');
  if (wrong.length > 0) throw new MistakeError(wrong.join('\n'));
}
