#!/usr/bin/env node
/**
 * The command. Options and help are light; each command loads what it needs only when it is run.
 */
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { version } from './version.js';
import { commands } from './commands/all.js';
import { removeTemporary } from './files.js';
import { optionsOf } from './command-options.js';
import { checkGiven, inPlainWords } from './given.js';
import { EXIT, MistakeError, StorageError } from './mistakes.js';
import { leave } from './signals.js';
import { isSystemError, reasonOf } from './system-errors.js';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // `| head` closes our output early: that is no mistake of anybody's.
  if (error.code === 'EPIPE') process.exit(EXIT.ok);
  process.stderr.write(`The answer cannot be written: ${reasonOf(error)}.\n`);
  leave(EXIT.mistake);
});
// With nobody left to read what went wrong, the exit code alone says it.
process.stderr.on('error', () => {});

const given = hideBin(process.argv);
const cli = yargs()
  .scriptName('cuptide')
  .usage('$0 <command>\n\nHow many cups, glasses, saucers and spoons a café needs, and why.')
  .version(version)
  .help()
  .strict()
  .parserConfiguration({
    'dot-notation': false,
    'boolean-negation': false,
    // Which options may be given several times, `checkGiven` knows.
    'duplicate-arguments-array': true,
  })
  .demandCommand(1, 1, 'Name a command; cuptide --help lists them.')
  // The help of a command is laid out before the command runs, wanted or not; unwrapped it costs little.
  .wrap(
    given.length === 0 || given.includes('--help')
      ? Math.min(100, process.stdout.columns ?? 100)
      : null,
  )
  .exitProcess(false)
  .fail((message, error) => {
    throw error ?? new MistakeError(inPlainWords(message));
  });
for (const command of commands) cli.command(command);

/** The option parser wraps what our own checks of options throw. */
const isMistake = (error: unknown): error is Error =>
  error instanceof MistakeError || (error instanceof Error && error.name === 'YError');

try {
  await cli.parseAsync(
    checkGiven(
      given,
      commands.map((command) => ({
        name: String(command.command).split(' ')[0]!,
        options: () => optionsOf(command),
      })),
    ),
  );
} catch (error) {
  removeTemporary();
  const { complain } = await import('./print.js');
  if (error instanceof StorageError) complain(error.message);
  else if (isMistake(error)) complain(inPlainWords(error.message));
  else if (isSystemError(error)) complain(`${error.path ?? 'The system'}: ${reasonOf(error)}.`);
  else
    complain(
      `cuptide failed. This is an error in cuptide, not in what you gave it: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    );
  process.exitCode =
    error instanceof StorageError
      ? EXIT.storage
      : isMistake(error) || isSystemError(error)
        ? EXIT.mistake
        : EXIT.failed;
}
