/** All commands, in the order of the help. A new command: its file beside this one, and one line here. */
import type { CommandModule } from 'yargs';
import { questions } from '../../questions/list.js';
import { check } from './check.js';
import { commandOf } from './question.js';
import { page } from './page.js';
import { report } from './report.js';
import { sites } from './sites.js';
import { starter } from './new.js';
import { till } from './till.js';
import { verify } from './verify.js';

export const commands = [
  starter,
  check,
  till,
  ...questions.filter(({ only }) => only !== 'letter').map(commandOf),
  report,
  page,
  sites,
  verify,
] as unknown as readonly CommandModule[];
