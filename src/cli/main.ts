#!/usr/bin/env node
/**
 * The command. Options and help are light; each command loads what it needs only when it is run.
 */
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { version } from './version.js';
import { commands } from './commands/all.js';
import { removeTemporary } from './files.js';
import { EXIT, MistakeError } from './mistakes.js';
import { didYouMean } from '../quantities/nearest.js';

// `| head` closes our output early: that is no mistake of anybody's.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(EXIT.ok);
  throw error;
});
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    removeTemporary();
    process.exit(EXIT.interrupted);
  });
}

const given = hideBin(process.argv);
const cli = yargs(given)
  .scriptName('cuptide')
  .usage('$0 <command>\n\nHow many cups, glasses, saucers and spoons a café needs, and why.')
  .version(version)
  .help()
  .strict()
  .demandCommand(1, 1, 'Name a command; cuptide --help lists them.')
  // The help of a command is laid out before the command runs, wanted or not; unwrapped it costs little.
  .wrap(
    given.length === 0 || given.includes('--help')
      ? Math.min(100, process.stdout.columns ?? 100)
      : null,
  )
  .exitProcess(false)
  .fail((message, error, instance) => {
    throw (
      error ??
      new MistakeError(
        `${message}\n${instance.parsed === false ? '' : 'cuptide --help tells more.'}`.trim(),
      )
    );
  });
for (const command of commands) cli.command(command);

/** The option parser takes an unknown command for an argument too many. */
function checkCommand(): void {
  const [word] = given;
  const known = commands.map(({ command }) => String(command).split(' ')[0]!);
  if (word !== undefined && !word.startsWith('-') && !known.includes(word))
    throw new MistakeError(
      `"${word}" is no command; ${didYouMean(word, known)}\ncuptide --help tells more.`,
    );
}

try {
  checkCommand();
  await cli.parseAsync();
} catch (error) {
  removeTemporary();
  // The option parser wraps what our own checks of options throw.
  if (error instanceof MistakeError || (error instanceof Error && error.name === 'YError')) {
    process.stderr.write(`${error.message}\n`);
    process.exitCode = EXIT.mistake;
  } else {
    process.stderr.write(
      `cuptide failed, which is a fault of its own, not yours: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    process.exitCode = EXIT.failed;
  }
}
