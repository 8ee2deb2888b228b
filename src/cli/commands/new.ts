/** cuptide new: a commented scenario file from a few answers, asked on a terminal or given as options. */
import type { CommandModule } from 'yargs';
import type { Given } from '../write-starter.js';

/** The questions of `scenario/starter-questions.ts` as options; not loaded from there, as help must stay light. */
const OPTIONS: Readonly<Record<string, string>> = {
  name: 'Name of the café',
  seats: 'Seats, such as 40',
  guests: 'Guests in the busiest hour, those who take away included',
  from: 'When the busy time begins, such as 7:00 or 7am',
  to: 'When it ends, such as 11:00 or 2pm',
  shape: 'How guests spread over these hours: morning, midday or all-day',
  stay: 'Share of guests who stay in, such as 40 %',
  dwell: 'How long they stay, such as "35 min"',
  menu: 'Drinks with commas between, such as "flat white, chai in a mug"',
  machine: 'Dishwasher: undercounter or hood, "two hoods" for more than one',
  'share-racks': 'Whether cups, saucers and spoons share a rack: yes or no',
  currency: 'Currency, such as EUR, £ or dollars',
  'staff-hour': 'What an hour of staff costs, such as 22.50 or £14',
  'cup-price': 'What a cup costs, such as 6.50',
};

export const starter: CommandModule<object, Given> = {
  command: 'new <file>',
  describe: 'Write a commented scenario to start from',
  builder: (yargs) =>
    Object.entries(OPTIONS).reduce(
      (all, [option, describe]) =>
        all.option(option, { type: 'string', requiresArg: true, describe }),
      yargs.positional('file', {
        type: 'string',
        demandOption: true,
        describe: 'File to write; never overwritten',
      }),
    ) as never,
  async handler(args) {
    const { writeStarter } = await import('../write-starter.js');
    await writeStarter(args);
  },
};
