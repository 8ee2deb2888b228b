/**
 * `npm test`: types, format and lint run beside the tests, as those wait for a browser half of their time. Names in the
 * last line what failed; arguments go to the tests.
 */
import { spawn } from 'node:child_process';

const checks = ['types', 'lint'].map((name) => ({ name, command: `npm run --silent ${name}` }));
const tests = {
  name: 'tests',
  command: 'npx vitest run --config tests/vitest.config.ts',
  args: process.argv.slice(2),
};

/** The name of the task if it failed. What it prints appears when it ends where `kept`, else at once. */
const failure = ({ name, command, args = [] }, kept) =>
  new Promise((resolve, reject) => {
    const [program, ...own] = command.split(' ');
    const child = spawn(program, [...own, ...args], {
      stdio: ['ignore', kept ? 'pipe' : 'inherit', kept ? 'pipe' : 'inherit'],
    });
    const said = [];
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (part) => said.push(part));
    child.on('error', reject);
    child.on('close', (code) => {
      if (code !== 0) process.stdout.write(Buffer.concat(said));
      resolve(code === 0 ? [] : [name]);
    });
  });

/** One after the other: the tests have the other core. */
async function checksFailed() {
  const failed = [];
  for (const check of checks) failed.push(...(await failure(check, true)));
  return failed;
}

const failed = (await Promise.all([checksFailed(), failure(tests, false)])).flat();
if (failed.length > 0) console.log(`Failed: ${failed.join(', ')}`);
process.exitCode = failed.length > 0 ? 1 : 0;
