import { spawnSync } from 'node:child_process';
import {
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  keepInputs,
  readWhole,
  removeTemporary,
  tryOutput,
  writeAll,
} from '../../src/cli/files.js';
import { makeFolders } from '../../src/cli/folders.js';
import { MistakeError } from '../../src/cli/mistakes.js';
import { reasonOf } from '../../src/cli/system-errors.js';
import { emptyFolder } from './run.js';

/** A process that cannot be running: larger than any system counts to. */
const NOBODY = 2 ** 30;

describe('files written together', () => {
  it('appear all, and replace what was there', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'a'), 'old');
    await writeAll([
      { path: join(folder, 'a'), content: 'new' },
      { path: join(folder, 'deep/er/b'), content: 'b' },
    ]);
    expect(readFileSync(join(folder, 'a'), 'utf8')).toBe('new');
    expect(readFileSync(join(folder, 'deep/er/b'), 'utf8')).toBe('b');
    expect(readdirSync(folder).toSorted()).toEqual(['a', 'deep']);
  });

  it('are all as before when one of them cannot be', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'a'), 'old');
    mkdirSync(join(folder, 'c'));
    await expect(
      writeAll([
        { path: join(folder, 'a'), content: 'new' },
        { path: join(folder, 'b'), content: 'b' },
        { path: join(folder, 'c'), content: 'a folder is in the way' },
      ]),
    ).rejects.toThrow(/c: cannot be written: is a directory/);
    expect(readFileSync(join(folder, 'a'), 'utf8')).toBe('old');
    expect(readdirSync(folder).toSorted()).toEqual(['a', 'c']);
  });

  it('sweep away what a killed run left of the same file, and nothing else', async () => {
    const folder = emptyFolder();
    const parts = {
      dead: `.a.${NOBODY}-0123abcd.part`,
      living: `.a.${process.pid}-0123abcd.part`,
      other: `.b.${NOBODY}-0123abcd.part`,
    };
    for (const name of Object.values(parts)) writeFileSync(join(folder, name), 'half');
    await writeAll([{ path: join(folder, 'a'), content: 'whole' }]);
    expect(readdirSync(folder).toSorted()).toEqual([parts.living, parts.other, 'a'].toSorted());
  });
});

describe('a symbolic link in the place of a file', () => {
  it('stays one, and what it points to is written, also beyond its folder', async () => {
    const [here, there] = [emptyFolder(), emptyFolder()];
    const [link, target] = [join(here, 'a.html'), join(there, 'b.html')];
    writeFileSync(target, 'old');
    symlinkSync(target, link);
    await tryOutput(link, 'file');
    await writeAll([{ path: link, content: 'new' }]);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(target, 'utf8')).toBe('new');
    expect([readdirSync(here), readdirSync(there)]).toEqual([['a.html'], ['b.html']]);
  });

  it('is refused where it leads to no file, or in a circle', async () => {
    const folder = emptyFolder();
    const [lost, circle] = [join(folder, 'lost'), join(folder, 'circle')];
    symlinkSync(join(folder, 'none'), lost);
    symlinkSync(circle, circle);
    for (const [path, says] of [
      [lost, /lost: is a link to a file that is not there/],
      [circle, /its links lead in a circle/],
    ] as const) {
      await expect(tryOutput(path, 'file')).rejects.toThrow(says);
      await expect(writeAll([{ path, content: 'x' }])).rejects.toThrow(says);
    }
    expect(readdirSync(folder).toSorted()).toEqual(['circle', 'lost']);
  });
});

describe('outputs tried before the work', () => {
  it('leave nothing to undo', async () => {
    const folder = emptyFolder();
    await tryOutput(join(folder, 'x/y'), 'folder');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('are made again where they are written, and gone again where they cannot be', async () => {
    const folder = emptyFolder();
    const files = ['x/y/a', 'x', 'x/z/b'].map((name) => ({
      path: join(folder, name),
      content: '',
    }));
    await expect(writeAll(files)).rejects.toThrow(/is a directory/);
    removeTemporary();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('leave no folder where a deeper one cannot be made', async () => {
    const folder = emptyFolder();
    await expect(tryOutput(join(folder, 'x', 'y'.repeat(300)), 'folder')).rejects.toThrow(
      MistakeError,
    );
    expect(readdirSync(folder)).toEqual([]);
  });

  it('are refused where a file is in the way, or a folder where a file is wanted', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'file'), '');
    await expect(tryOutput(join(folder, 'file/deeper'), 'folder')).rejects.toThrow(
      /a part of this path is a file/,
    );
    await expect(tryOutput(folder, 'file')).rejects.toThrow(/is a directory/);
    await expect(tryOutput('', 'folder')).rejects.toThrow(MistakeError);
    await expect(tryOutput('-', 'folder')).rejects.toThrow(/--out: .* name a folder/);
  });
});

describe('what must not be lost', () => {
  it('is a pipe or a device in the place of a file: it is there afterwards', async () => {
    const pipe = join(emptyFolder(), 'pipe.html');
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    const says = /is a device or a pipe; name a file to write/;
    await expect(tryOutput(pipe, 'file')).rejects.toThrow(says);
    await expect(writeAll([{ path: pipe, content: 'x' }])).rejects.toThrow(says);
    expect(statSync(pipe).isFIFO()).toBe(true);
  });

  it('is what was read, by whatever name it is written to', () => {
    const folder = emptyFolder();
    const [input, link, other] = ['a.json', 'b.json', 'c.json'].map((one) => join(folder, one));
    writeFileSync(input!, '{}');
    writeFileSync(other!, '{}');
    symlinkSync(input!, link!);
    expect(() => keepInputs([link!], [undefined, input])).toThrow(/b\.json: is what was given/);
    expect(() => keepInputs([other!, join(folder, 'd.json')], [input, 'none'])).not.toThrow();
  });
});

describe('folders', () => {
  it('are made from the highest down, and told', () => {
    const folder = emptyFolder();
    expect(makeFolders(join(folder, 'a/b'))).toEqual([join(folder, 'a'), join(folder, 'a/b')]);
    expect(makeFolders(join(folder, 'a/b'))).toEqual([]);
  });

  it('that no system can make are refused at once', () => {
    expect(() => makeFolders('/proc/none/deeper')).toThrow();
  });
});

describe('reading', () => {
  it('refuses what is no file, and what is too large', async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'a'), 'abc');
    expect(Buffer.from(await readWhole(join(folder, 'a'), 3)).toString()).toBe('abc');
    await expect(readWhole(join(folder, 'a'), 2)).rejects.toThrow(MistakeError);
    await expect(readWhole(folder, 3)).rejects.toThrow(/is a directory/);
    await expect(readWhole('', 3)).rejects.toThrow(/empty/);
  });
});

describe('what the system says', () => {
  it('is said in words, also where it is something new', () => {
    const error = (code: string): NodeJS.ErrnoException =>
      Object.assign(new Error(`${code}: resource busy or locked, rename 'x'`), { code });
    expect(reasonOf(error('EBUSY'))).toBe('it is in use by another program');
    expect(reasonOf(error('EXYZ'))).toBe('the system refuses it (EXYZ)');
  });
});
