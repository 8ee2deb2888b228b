// The demo chain on engines that people have: GNU parallel and a one-node Slurm, each with faults, must give the bytes
// of one process. Installs nothing: what is missing is named and left out. `npm run test:engines`
import { strict as assert } from 'node:assert';
import { createHash } from 'node:crypto';
import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { image } from './image.mjs';
import { slurm } from './slurm.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const engines = join(root, 'shared/engines');
const work = mkdtempSync(join(tmpdir(), 'cuptide-engines-'));
const command = join(root, 'dist/cuptide.js');
const study = {
  TABLE: join(root, 'scenarios/chain.csv'),
  BASE: join(root, 'scenarios/1-commuter-bar.yaml'),
};
const options = ['--days', process.env.DAYS ?? '40'];
const merged = ['--json', '--date', '2027-01-11'];
const PARTS = '12';

const digest = (text) => createHash('sha256').update(text).digest('hex').slice(0, 16);
const say = (text) => console.log(text);
const has = (name) => spawnSync('sh', ['-c', `command -v ${name}`]).status === 0;
const cuptide = (...args) =>
  spawnSync(
    process.execPath,
    [command, 'sites', study.TABLE, '--base', study.BASE, ...options, ...args],
    {
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    },
  );
const partsIn = (folder) => readdirSync(folder).filter((name) => /^part-.*\.jsonl$/.test(name));
const sleep = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** The command of the study that works on some part, of those that this test started; null: none yet. */
function workingPart(folder) {
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const line = readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0');
      if (line[0].endsWith('node') && line.includes(folder) && line.includes('--part'))
        return Number(pid);
    } catch {
      // It has ended.
    }
  }
  return null;
}

async function killAPart(folder, signal) {
  for (let tries = 0; tries < 600; tries += 1) {
    const pid = workingPart(folder);
    if (pid !== null) {
      // Into its work: loading takes a moment.
      await sleep(700);
      try {
        process.kill(pid, signal);
        return;
      } catch {
        continue;
      }
    }
    await sleep(50);
  }
  throw new Error('no part was seen at work');
}

/** Faults of the folder: a part cut short, one that is lost, and one of another study, which the merge must refuse. */
function damage(folder, again) {
  const [first, second, third] = partsIn(folder);
  writeFileSync(join(folder, first), readFileSync(join(folder, first)).subarray(0, 700));
  rmSync(join(folder, second));
  const elsewhere = join(work, `other-${folder.split('/').at(-1)}`);
  assert.equal(cuptide('--part', `3/${PARTS}`, '--out', elsewhere, '--seed', 'other').status, 0);
  const kept = readFileSync(join(folder, third));
  writeFileSync(join(folder, third), readFileSync(join(elsewhere, partsIn(elsewhere)[0])));
  const refused = cuptide('--merge', '--out', folder, '--parts', PARTS);
  assert.equal(refused.status, 2);
  assert.match(refused.stderr, /is of another\s+study/);
  say('  a part of another study in the folder: refused, exit 2');
  writeFileSync(join(folder, third), kept);
  const missing = cuptide('--merge', '--out', folder, '--parts', PARTS);
  assert.equal(missing.status, 3);
  assert.equal(missing.stdout, '1-2\n');
  say(`  a part cut short and one lost: exit 3, names ${missing.stdout.trim()}`);
  again(missing.stdout.trim());
}

async function parallel(one) {
  const folder = join(work, 'parallel');
  const env = {
    ...process.env,
    ...study,
    DIR: folder,
    PARTS,
    JOBS: '2',
    CUPTIDE: `${process.execPath} ${command}`,
    MERGE: merged.join(' '),
  };
  const run = () =>
    spawn('sh', [join(engines, 'parallel.sh'), ...options], {
      env,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  const ended = (child) =>
    new Promise((resolve) => {
      let [out, err] = ['', ''];
      child.stdout.on('data', (text) => (out += text));
      child.stderr.on('data', (text) => (err += text));
      child.on('close', (status) => resolve({ status, out, err }));
    });
  const first = ended(run());
  await killAPart(folder, 'SIGKILL');
  say('  a task killed: tried again by parallel');
  const { status, out, err } = await first;
  assert.equal(status, 0, err);
  assert.equal(digest(out), digest(one), 'parallel: other bytes than one process');
  damage(folder, () => {});
  const again = await ended(run());
  assert.equal(again.status, 0, again.err);
  assert.equal(
    digest(again.out),
    digest(one),
    'parallel after faults: other bytes than one process',
  );
  say(`  merged: ${digest(again.out)}`);
}

async function onSlurm(one) {
  const engine = await slurm(join(work, 'slurm-state'));
  try {
    const folder = join(work, 'slurm');
    const env = {
      ...process.env,
      ...engine.env,
      ...study,
      DIR: folder,
      PARTS,
      WAIT: '0',
      CUPTIDE: `${process.execPath} ${command}`,
      OPTIONS: options.join(' '),
      MERGE: merged.join(' '),
    };
    const submit = (list) => {
      const ran = spawnSync('sh', [join(engines, 'slurm.sh')], {
        env: list === undefined ? env : { ...env, LIST: list },
        encoding: 'utf8',
      });
      assert.equal(ran.status, 0, ran.stderr);
      return ran.stdout.trim().split(' ')[1];
    };
    const logOf = async (job) => {
      await engine.ended(job);
      return readFileSync(join(folder, `logs/merge-${job}.out`), 'utf8');
    };
    let job = submit();
    await killAPart(folder, 'SIGKILL');
    await engine.restartController();
    say('  a task killed; the controller ended by TERM and started again');
    const log = await logOf(job);
    const named = /^(\d[\d,-]*)$/m.exec(log)?.[1];
    assert.ok(named !== undefined, `the merge named nothing:\n${log}`);
    say(`  the merge ran all the same, and named part ${named}`);
    job = submit(named);
    assert.equal(digest(await logOf(job)), digest(one), 'slurm: other bytes than one process');
    damage(folder, (list) => {
      job = submit(list);
    });
    const last = await logOf(job);
    assert.equal(digest(last), digest(one), 'slurm after faults: other bytes than one process');
    say(`  merged: ${digest(last)}`);
  } finally {
    await engine.stop();
  }
}

async function inThisShell(one) {
  const folder = join(work, 'by-hand');
  mkdirSync(folder);
  // Parts of different numbers, one of them ended by TERM in the middle: it must leave nothing behind.
  const child = spawn(
    process.execPath,
    [
      command,
      'sites',
      study.TABLE,
      '--base',
      study.BASE,
      ...options,
      '--part',
      '1/2',
      '--out',
      folder,
    ],
    { stdio: 'ignore' },
  );
  await sleep(2500);
  child.kill('SIGTERM');
  const status = await new Promise((resolve) => child.on('close', (code) => resolve(code)));
  assert.equal(status, 143);
  assert.deepEqual(readdirSync(folder), []);
  say('  a part ended by TERM: exit 143, nothing left behind');
  for (const part of ['1/2', '2/4', '4/4'])
    assert.equal(cuptide('--part', part, '--out', folder).status, 0);
  const ran = cuptide('--merge', '--out', folder, ...merged);
  assert.equal(ran.status, 0, ran.stderr);
  assert.equal(digest(ran.stdout), digest(one), 'by hand: other bytes than one process');
  say(`  merged from parts of 2 and of 4: ${digest(ran.stdout)}`);
}

/** A study of draws and measuring, whose units are no sites: the same from parts of 2 and of 3 as in one process. */
function acrossSites() {
  const few = join(work, 'few.csv');
  const [head, ...sites] = readFileSync(study.TABLE, 'utf8').split('\n');
  writeFileSync(few, [head, ...sites.slice(0, 3), ''].join('\n'));
  const folder = join(work, 'across');
  const run = (...args) => {
    const ran = spawnSync(
      process.execPath,
      [
        command,
        'sites',
        few,
        '--base',
        study.BASE,
        '--days',
        '10',
        '--draws',
        '12',
        '--measure',
        ...args,
      ],
      { encoding: 'utf8' },
    );
    assert.equal(ran.status, 0, ran.stderr);
    return ran.stdout;
  };
  const whole = run('--json');
  for (const part of ['1/2', '2/4', '4/4']) run('--part', part, '--out', folder);
  assert.equal(
    run('--merge', '--out', folder, '--json'),
    whole,
    'draws and measuring: other bytes than one process',
  );
  say(`  draws and measuring at 3 sites, merged from parts of 2 and of 4: ${digest(whole)}`);
}

function inAnImage(one) {
  const { run } = image(join(work, 'image'), root, say);
  const folder = join(work, 'from-image');
  mkdirSync(folder, { mode: 0o777 });
  // Whoever runs in the image is another user than this one.
  chmodSync(folder, 0o777);
  const demo = ['sites', '/cuptide/scenarios/chain.csv', '--base'];
  const sites = [...demo, '/cuptide/scenarios/1-commuter-bar.yaml', ...options];
  for (const index of ['0', '1']) {
    const ran = run(folder, [...sites, '--index', index, '--parts', '2', '--out', '/results']);
    assert.equal(ran.status, 0, ran.stderr);
  }
  const ran = run(folder, [...sites, '--merge', '--out', '/results', ...merged]);
  assert.equal(ran.status, 0, ran.stderr);
  assert.equal(digest(ran.stdout), digest(one), 'image: other bytes than one process');
  say(`  two parts and their merge in the image: ${digest(ran.stdout)}`);
}

if (!existsSync(command)) throw new Error('build first: node src/cli/build.mjs');
try {
  const whole = cuptide(...merged);
  assert.equal(whole.status, 0, whole.stderr);
  say(`one process: ${digest(whole.stdout)}`);
  const only = process.argv.slice(2);
  for (const [name, needs, test] of [
    ['by hand', [], inThisShell],
    ['draws', [], acrossSites],
    ['image', ['buildah', 'ldd'], inAnImage],
    ['parallel', ['parallel'], parallel],
    ['slurm', ['slurmctld', 'slurmd', 'munged', 'sbatch'], onSlurm],
  ]) {
    if (only.length > 0 && !only.includes(name)) continue;
    const missing = needs.filter((tool) => !has(tool));
    say(missing.length > 0 ? `${name}: left out, missing ${missing.join(', ')}` : `${name}:`);
    if (missing.length === 0) await test(whole.stdout);
  }
} finally {
  rmSync(work, { recursive: true, force: true });
}
