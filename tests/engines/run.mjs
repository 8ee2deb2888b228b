// The letter in other browser engines than the one that comes with the tests: what each does, and whether files saved in it are the same.
// Needs Debian's firefox-esr, and webkit2gtk-driver with a display (xvfb-run gives one); what is missing is named, and is no failure.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { firefox } from './firefox.mjs';
import { listen, steps } from './steps.mjs';
import { webkit } from './webkit.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'cuptide-engines-'));
const command = (...args) =>
  execFileSync(process.execPath, [join(root, 'dist/cuptide.js'), ...args], { encoding: 'utf8' });
command('report', join(root, 'scenarios/1-commuter-bar.yaml'), '--out', folder, '--days', '400');
const url = `file://${join(folder, '1-commuter-bar.html')}`;

const ENGINES = { 'Firefox (firefox-esr)': firefox, 'WebKit (webkit2gtk-driver)': webkit };
const only = process.argv[2];
let failures = 0;

for (const [name, start] of Object.entries(ENGINES)) {
  if (only !== undefined && !name.toLowerCase().startsWith(only)) continue;
  const engine = await start().catch((error) => {
    console.log(`${name}: could not be started: ${error.message}`);
    return null;
  });
  if (engine === null) {
    console.log(`${name}: missing here, so not tried`);
    continue;
  }
  console.log(`\n${name}: ${engine.version}`);
  const files = {};
  try {
    await engine.open(url);
    await engine.run(listen);
    for (const [step, body] of Object.entries(steps)) {
      try {
        const seen = await engine.run(body);
        if (step.startsWith('saved')) files[step] = seen;
        const wrong = judge(step, seen, files);
        if (wrong !== null) failures += 1;
        console.log(
          `  ${wrong === null ? 'ok   ' : 'WRONG'} ${step}: ${shown(seen)}${wrong === null ? '' : ` (${wrong})`}`,
        );
      } catch (error) {
        failures += 1;
        console.log(`  WRONG ${step}: ${error.message}`);
      }
    }
    writeFileSync(join(folder, `${name.split(' ')[0].toLowerCase()}.png`), await engine.picture());
    if (engine.pdf !== null)
      writeFileSync(join(folder, `${name.split(' ')[0].toLowerCase()}.pdf`), await engine.pdf());
  } finally {
    await engine.close();
  }
}
console.log(`\nPictures and prints: ${folder}`);
process.exitCode = failures === 0 ? 0 : 1;

function shown(seen) {
  if (seen?.base64 !== undefined)
    return `${seen.file}, ${Buffer.from(seen.base64, 'base64').length} bytes`;
  return JSON.stringify(seen);
}

/** @returns what is wrong with what was seen, or null */
function judge(step, seen, files) {
  const bytes = seen?.base64 === undefined ? null : Buffer.from(seen.base64, 'base64');
  switch (step) {
    case 'wakes':
      return seen === 'as-sent' ? null : 'is not the letter as sent';
    case 'typefaces':
      return seen >= 3 ? null : 'typefaces of the letter are not in use';
    case 'saved answer': {
      const scenario = join(folder, 'saved.yaml');
      writeFileSync(scenario, Buffer.from(files['saved scenario'].base64, 'base64'));
      command('report', scenario, '--out', folder, '--days', '400');
      // What it was made from differs: the page's carries the scenario itself, the command's its digest.
      const unmade = (json) => JSON.stringify({ ...JSON.parse(json), made: null });
      return unmade(bytes.toString()) === unmade(readFileSync(join(folder, 'saved.json'), 'utf8'))
        ? null
        : 'not the bytes of the command';
    }
    case 'saved order sheet':
      return bytes.subarray(0, 2).toString() === 'PK' && bytes.length > 5_000
        ? null
        : 'no workbook';
    case 'saved letter':
      return bytes.toString('utf8').startsWith('<!doctype html>') ? null : 'no letter';
    case 'questions':
      return seen.some((one) => one.includes(':')) ? 'a question has no answer' : null;
    case 'walk':
    case 'cards':
      return seen > 0 ? null : 'nothing is shown';
    case 'faults':
      return seen.length === 0 ? null : 'complaints';
    default:
      return null;
  }
}
