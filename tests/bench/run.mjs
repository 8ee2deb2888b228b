// npm run bench: one table, every row measured in this run on this machine, as ratios. Times are reported, never
// asserted; the check statistics are, within four combined standard errors.
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { leanParts } from '../../src/cli/lean-parts.mjs';

const here = fileURLToPath(new URL('.', import.meta.url));
const root = fileURLToPath(new URL('../..', import.meta.url));
// Inside the project, so that what is bundled finds the packages that stay outside the bundle.
const folder = mkdtempSync(join(root, 'node_modules/.bench-'));
const RUNS = 7;
const TURNS = 21;
const LONG_RUNS = 5;
const node = process.execPath;
const compiler = 'g++';
const missing = [];

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const lines = (text) =>
  text
    .trim()
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line));
const run = (command, args) =>
  execFileSync(command, args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    stdio: ['ignore', 'pipe', 'inherit'],
  });

/** Mean and standard error of each statistic over all runs. */
function statistics(results) {
  const n = results.reduce((sum, result) => sum + result.n, 0);
  return [0, 1].map((which) => {
    if (results.some((result) => result.sums[which][0] === null)) return null;
    const total = results.reduce((sum, result) => sum + result.sums[which][0], 0);
    const squares = results.reduce((sum, result) => sum + result.sums[which][1], 0);
    const mean = total / n;
    return { mean, error: Math.sqrt(Math.max(0, squares / n - mean * mean) / Math.max(1, n - 1)) };
  });
}

async function main() {
  await build({
    absWorkingDir: root,
    entryPoints: [join(here, 'work.ts'), join(here, 'scale.ts')],
    outdir: folder,
    bundle: true,
    platform: 'node',
    format: 'esm',
    outExtension: { '.js': '.mjs' },
    logLevel: 'error',
    external: ['simjs'],
    plugins: [leanParts],
    banner: {
      js: "import { createRequire as benchRequire } from 'node:module'; const require = benchRequire(import.meta.url);",
    },
  });
  // Each tool is a process that does one run for each line it is sent: they take turns, so that a machine that is slower
  // for a minute is slower for all, and a ratio is one of two runs side by side.
  const inTurns = (command, args) => {
    const child = spawn(command, args, { cwd: root, stdio: ['pipe', 'pipe', 'inherit'] });
    // A tool that will not run is seen by its silence.
    child.on('error', () => {});
    child.stdin.on('error', () => {});
    const told = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    return {
      async next() {
        child.stdin.write('\n');
        const { value } = await told.next();
        return value === undefined ? null : JSON.parse(value);
      },
      end: () => child.stdin.end(),
    };
  };
  const work = (name, replications, ...rest) =>
    inTurns(node, [join(folder, 'work.mjs'), name, String(replications), ...rest]);
  const python = ['/usr/bin/python3', 'python3'].find(
    (command) => spawnSync(command, ['-c', 'import simpy'], { stdio: 'ignore' }).status === 0,
  );
  const simpy = (...words) =>
    python === undefined ? null : inTurns(python, [join(here, 'peer.py'), ...words]);
  const compiled =
    spawnSync(
      compiler,
      ['-O3', '-march=native', '-o', join(folder, 'limit'), join(here, 'limit.cpp')],
      { stdio: ['ignore', 'ignore', 'inherit'] },
    ).status === 0;
  const limit = (...words) => (compiled ? inTurns(join(folder, 'limit'), words) : null);

  const listed = [
    {
      work: 'M/M/1',
      who: 'C++ by hand',
      unit: 600_000,
      per: 'events',
      tool: limit('mm1'),
    },
    {
      work: 'M/M/1',
      who: 'our engine',
      unit: 600_000,
      per: 'events',
      tool: work('engine-mm1', 1),
    },
    {
      work: 'M/M/1',
      who: 'simjs',
      unit: 600_000,
      per: 'events',
      tool: work('simjs-mm1', 1),
    },
    {
      work: 'M/M/1',
      who: 'SimPy',
      unit: 600_000,
      per: 'events',
      tool: simpy('mm1', '1'),
    },
    {
      work: 'cup cycle',
      who: 'C++ by hand',
      unit: 1,
      per: 'days',
      tool: limit('cups', '2000'),
    },
    {
      work: 'cup cycle',
      who: 'our engine',
      unit: 1,
      per: 'days',
      tool: work('engine-cups', 2000),
    },
    {
      work: 'cup cycle',
      who: 'our café, from a scenario file',
      unit: 1,
      per: 'days',
      tool: work('cafe-cups', 2000, join(here, 'cup-cycle.yaml')),
    },
    {
      work: 'cup cycle',
      who: 'simjs, plain counts',
      unit: 1,
      per: 'days',
      tool: work('simjs-cups', 200),
    },
    {
      work: 'cup cycle',
      who: 'simjs, its own stores',
      unit: 1,
      per: 'days',
      tool: work('simjs-stores', 200),
    },
    {
      work: 'cup cycle',
      who: 'SimPy, plain counts',
      unit: 1,
      per: 'days',
      tool: simpy('cups', '100'),
    },
    {
      work: 'cup cycle',
      who: 'SimPy, its own containers',
      unit: 1,
      per: 'days',
      tool: simpy('containers', '100'),
    },
  ];
  // The first run of each warms it up.
  for (let turn = 0; turn <= TURNS; turn += 1)
    for (const row of listed) {
      const result = (await row.tool?.next()) ?? null;
      row.results = result === null ? null : turn === 0 ? [] : [...row.results, result];
    }
  for (const { tool } of listed) tool?.end();
  const rows = listed.filter(({ results }) => results !== null);
  for (const { who, results } of listed)
    if (results === null && !missing.includes(who)) missing.push(who);
  for (const row of rows) {
    row.rates = row.results.map((result) => (result.n * row.unit) / result.seconds);
    row.perSecond = median(row.rates);
    row.statistics = statistics(row.results);
  }
  const faults = [];
  // Mean wait in queue of an M/M/1 at load 0.8 and service 1 (any textbook of queues): 0.8 / (1 - 0.8) = 4.
  for (const {
    work: what,
    who,
    statistics: [wait],
  } of rows) {
    if (what === 'M/M/1' && Math.abs(wait.mean - 4) > 4 * wait.error)
      faults.push(
        `${what}: ${who} ${wait.mean.toFixed(3)} ± ${wait.error.toFixed(3)} against theory 4`,
      );
  }
  /** The middle of the ratios turn by turn. */
  const against = (row, other) => {
    const ratio = median(row.rates.map((rate, turn) => rate / other.rates[turn]));
    return ratio.toFixed(ratio < 0.1 ? 4 : 2);
  };
  const table = rows.map((row) => {
    const fastest = rows.find((one) => one.work === row.work && one.who === 'C++ by hand');
    const others = rows.filter((one) => one.work === row.work && one !== row);
    for (const other of others) {
      row.statistics.forEach((mine, which) => {
        const theirs = other.statistics[which];
        if (mine === null || theirs === null || (mine.error === 0 && theirs.error === 0)) return;
        const off = Math.abs(mine.mean - theirs.mean) / Math.hypot(mine.error, theirs.error);
        if (off > 4)
          faults.push(
            `${row.work}: ${row.who} ${mine.mean.toFixed(3)} against ${other.who} ${theirs.mean.toFixed(3)}, ${off.toFixed(1)} standard errors apart`,
          );
      });
    }
    const told = row.statistics.map((one) =>
      one === null || one.mean === 0 ? '' : `${one.mean.toFixed(2)} ± ${one.error.toFixed(2)}`,
    );
    return {
      work: row.work,
      who: row.who,
      rate: `${Math.round(row.perSecond).toLocaleString('en')} ${row.per}/s`,
      ratio: fastest ? against(row, fastest) : '',
      check:
        row.work === 'M/M/1'
          ? `wait ${told[0]} (theory 4)`
          : `lost ${told[0]}${told[1] === '' ? '' : `, most in hand ${told[1]}`}`,
    };
  });
  print(
    ['work', 'by', 'rate', '× C++', 'check'],
    table.map((row) => [row.work, row.who, row.rate, row.ratio, row.check]),
  );

  // What is timed is what the sources say now.
  run(node, ['src/cli/build.mjs']);
  const demo = 'scenarios/1-commuter-bar.yaml';
  const wall = (args) => {
    const start = process.hrtime.bigint();
    execFileSync(node, args, { cwd: root, stdio: 'ignore' });
    return Number(process.hrtime.bigint() - start) / 1e6;
  };
  const bare = median(Array.from({ length: RUNS + 2 }, () => wall(['-e', '0'])));
  const beyond = (args) => median(Array.from({ length: RUNS + 2 }, () => wall(args))) - bare;
  const commands = {
    'node -e 0': bare,
    'cuptide --help, beyond it': beyond(['dist/cuptide.js', '--help']),
    'cuptide size, demo, 1,000 + 1,000 days, beyond it': beyond([
      'dist/cuptide.js',
      'size',
      demo,
      '--days',
      '1000',
      '--json',
    ]),
  };
  print(
    ['whole command', 'ms'],
    Object.entries(commands).map(([name, ms]) => [name, ms.toFixed(0)]),
  );

  const guests = (seats) =>
    median(
      lines(run(node, [join(folder, 'scale.mjs'), 'guests', demo, String(seats)])).map(
        (line) => line.nsAGuest,
      ),
    );
  const [few, many] = [guests(100), guests(2000)];
  const [memory] = lines(run(node, [join(folder, 'scale.mjs'), 'days', demo, '1000000']));
  const answers = lines(run(node, [join(folder, 'scale.mjs'), 'answers', demo]));
  const longRun = (threads) => [
    'dist/cuptide.js',
    'size',
    demo,
    '--days',
    '30000',
    '--json',
    '--threads',
    String(threads),
  ];
  if (run(node, longRun(1)) !== run(node, longRun(2)))
    faults.push('the answer on two threads is not the answer on one, byte for byte');
  /** Two processes that know nothing of each other, each with the work of one: what two cores of this machine can give. */
  const apart = async () => {
    const start = process.hrtime.bigint();
    await Promise.all(
      [1, 2].map(
        () =>
          new Promise((resolve) => {
            spawn(node, longRun(1), { cwd: root, stdio: 'ignore' }).on('close', resolve);
          }),
      ),
    );
    return Number(process.hrtime.bigint() - start) / 1e6;
  };
  const long = [];
  for (let turn = 0; turn < LONG_RUNS; turn += 1)
    long.push({ one: wall(longRun(1)), two: wall(longRun(2)), apart: await apart() });
  const middle = (ms) => median(long.map(ms));
  const growth = {
    'ns a guest at 100 seats': few.toFixed(0),
    'ns a guest at 2,000 seats': many.toFixed(0),
    ratio: (many / few).toFixed(2),
    'MB at 1,000,000 days and 10 ware': memory.megabytes.toFixed(0),
    'ms, provisional answer of the demo (file read, 200 + 200 days), warm': median(
      answers.map((line) => line.provisional),
    ).toFixed(0),
    'ms, certified answer of the demo (file read, 8,000 + 8,000 days), warm, one thread': median(
      answers.map((line) => line.certified),
    ).toFixed(0),
    'ms, 30,000 + 30,000 days on one thread': middle(({ one }) => one).toFixed(0),
    'the same on two': middle(({ two }) => two).toFixed(0),
    'one over two': middle(({ one, two }) => one / two).toFixed(2),
    'two such runs at once over one after the other: what two cores give here': middle(
      ({ one, apart: both }) => (2 * one) / both,
    ).toFixed(2),
  };
  print(['growth', ''], Object.entries(growth));
  for (const name of missing) console.log(`left out, not on this machine: ${name}`);
  for (const fault of faults) console.error(`the checks disagree: ${fault}`);
  const version = (name) =>
    JSON.parse(readFileSync(join(root, 'node_modules', name, 'package.json'), 'utf8')).version;
  writeFileSync(
    join(root, 'reports/bench.json'),
    `${JSON.stringify({ node: process.version, processor: cpus()[0].model, cores: cpus().length, versions: { seedrandom: version('seedrandom'), simjs: version('simjs'), esbuild: version('esbuild') }, rows: table, commands, growth, missing }, null, 1)}\n`,
  );
  if (faults.length > 0) process.exitCode = 1;
}

function print(head, rows) {
  const widths = head.map((title, at) =>
    Math.max(title.length, ...rows.map((row) => String(row[at]).length)),
  );
  const line = (cells) =>
    cells
      .map((cell, at) =>
        at === 0 || at === head.length - 1 || !/^[\d.]/.test(String(cell))
          ? String(cell).padEnd(widths[at])
          : String(cell).padStart(widths[at]),
      )
      .join('  ')
      .trimEnd();
  console.log(
    `\n${line(head)}\n${widths.map((width) => '-'.repeat(width)).join('  ')}\n${rows.map(line).join('\n')}`,
  );
}

try {
  await main();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
