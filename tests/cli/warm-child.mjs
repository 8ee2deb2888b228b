// One process that runs the built command again and again, as a new one would, but with its parts read and warm.
import { pathToFileURL } from 'node:url';

for (const one of [process, process.stdout, process.stderr]) one.setMaxListeners(0);
const command = pathToFileURL(process.argv[2]).href;
process.removeAllListeners('SIGINT');
const write = { out: process.stdout.write, err: process.stderr.write };
let run = 0;

process.on('message', async ({ args, cwd }) => {
  const said = { out: [], err: [] };
  const hear =
    (texts) =>
    (text, ...rest) => {
      texts.push(Buffer.from(text).toString('utf8'));
      rest.find((one) => typeof one === 'function')?.();
      return true;
    };
  process.stdout.write = hear(said.out);
  process.stderr.write = hear(said.err);
  process.chdir(cwd);
  process.argv = [process.argv[0], process.argv[1], ...args];
  process.exitCode = undefined;
  // Another address: the entry is run anew, while what it imports is shared.
  await import(`${command}?run=${(run += 1)}`);
  const status = process.exitCode ?? 0;
  process.exitCode = 0;
  process.stdout.write = write.out;
  process.stderr.write = write.err;
  process.send({ status, out: said.out.join(''), err: said.err.join('') });
});
process.on('disconnect', () => process.exit(0));
