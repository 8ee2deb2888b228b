// The shipped Containerfile built with buildah, and run. Where its base cannot be pulled, an image is made from nothing but
// this machine's Node, the libraries that it loads and a user, and the same Containerfile is built on that. Needs root.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, realpathSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const PULL_MS = 30_000;
const BASE = 'docker.io/library/node:20-slim';

/** @param work an empty folder @returns how it was built, and a way to run the command in it */
export function image(work, root, say) {
  mkdirSync(work, { recursive: true });
  const buildah = (args, options = {}) =>
    spawnSync(
      'buildah',
      [
        '--root',
        join(work, 'store'),
        '--runroot',
        join(work, 'run'),
        '--storage-driver',
        'vfs',
        ...args,
      ],
      { encoding: 'utf8', maxBuffer: 1 << 28, ...options },
    );
  const must = (...args) => {
    const ran = buildah(args);
    if (ran.status !== 0) throw new Error(`buildah ${args[0]}: ${ran.stderr || ran.error}`);
    return ran.stdout.trim();
  };
  const pulled = buildah(['pull', '--quiet', BASE], { timeout: PULL_MS });
  const base = pulled.status === 0 ? BASE : 'localhost/node-of-this-machine';
  if (base === BASE) say(`  base: ${BASE}, pulled`);
  else {
    say(
      `  base: ${BASE} cannot be pulled here, so one is made of this machine's Node and its libraries`,
    );
    const tree = join(work, 'tree');
    const put = (from, to) => {
      mkdirSync(join(tree, dirname(to)), { recursive: true });
      cpSync(from, join(tree, to), { dereference: true });
    };
    put(realpathSync(process.execPath), '/usr/local/bin/node');
    for (const line of spawnSync('ldd', [process.execPath], { encoding: 'utf8' }).stdout.split(
      '\n',
    )) {
      const [, library] = /(?:=> )?(\/\S+) \(/.exec(line) ?? [];
      if (library !== undefined) put(realpathSync(library), library);
    }
    mkdirSync(join(tree, 'etc'), { recursive: true });
    writeFileSync(join(tree, 'etc/passwd'), 'root:x:0:0::/:\nnode:x:1000:1000::/:\n');
    writeFileSync(join(tree, 'etc/group'), 'root:x:0:\nnode:x:1000:\n');
    writeFileSync(
      join(work, 'Containerfile.node'),
      'FROM scratch\nCOPY . /\nENV PATH=/usr/local/bin\n',
    );
    must('bud', '--isolation', 'chroot', '-t', base, '-f', join(work, 'Containerfile.node'), tree);
  }
  must(
    'bud',
    '--isolation',
    'chroot',
    '--build-arg',
    `BASE=${base}`,
    '-t',
    'cuptide',
    '-f',
    join(root, 'shared/engines/Containerfile'),
    root,
  );
  const container = must('from', '--pull-never', 'cuptide');
  return {
    /** @param results a folder outside, seen as /results */
    run: (results, args) =>
      buildah([
        'run',
        '--isolation',
        'chroot',
        '-v',
        `${results}:/results`,
        container,
        '--',
        ...entry(JSON.parse(must('inspect', container)).OCIv1.config),
        ...args,
      ]),
  };
}

/** `buildah run` takes no entry point of its own accord: the image's is read, so that what is shipped is what runs. */
function entry({ Entrypoint, User }) {
  if (User !== 'node') throw new Error(`the image runs as "${User}", not as node`);
  return Entrypoint;
}
