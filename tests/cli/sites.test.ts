/** cuptide sites in parts: the same bytes whatever the split, and what is missing, damaged or of another study is said. */
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { partText, readPart, studyDigest } from '../../src/cli/sites/part-file.js';
import { mergeParts } from '../../src/cli/sites/merge.js';
import { storePart } from '../../src/cli/sites/part-store.js';
import type { SitesAnswer } from '../../src/questions/sites/answer.js';
import { csvText, siteRows } from '../../src/questions/sites/csv.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { cuptide, emptyFolder, root } from './run.js';

const head = { study: 'abc', version: '1', part: 1, of: 2 };

describe('a part as a file', () => {
  it('is read back as it was written, and no byte of it can change unseen', () => {
    const rows = ['{"unit":"a","x":1}', '{"unit":"b","x":"ü"}'];
    const text = partText(head, rows);
    expect(readPart(text)).toEqual({ ok: true, head, rows });
    expect(readPart(partText(head, []))).toEqual({ ok: true, head, rows: [] });
    for (let at = 0; at < text.length; at += 1) {
      expect(readPart(text.slice(0, at)).ok).toBe(false);
      const other = text[at] === '7' ? '8' : '7';
      expect(readPart(text.slice(0, at) + other + text.slice(at + 1)).ok).toBe(false);
    }
  });

  it('has the digest of what it is made from, wherever one text ends and the next begins', () => {
    expect(studyDigest(['ab', 'c'])).not.toBe(studyDigest(['a', 'bc']));
    expect(studyDigest(['ab', 'c'])).toBe(studyDigest(['ab', new TextEncoder().encode('c')]));
  });
});

describe('merging', () => {
  const row = (unit: string, x = 1): string => `{"unit":"${unit}","x":${x}}`;
  const store = (folder: string, part: number, of: number, rows: string[], study = 'abc'): void =>
    storePart(
      folder,
      `part-${String(part).padStart(6, '0')}-of-${String(of).padStart(6, '0')}.jsonl`,
      partText({ ...head, study, part, of }, rows),
    );

  it('goes by unit: parts of different numbers mix, and the same unit twice must be the same', () => {
    const folder = emptyFolder();
    store(folder, 1, 2, [row('a'), row('c')]);
    store(folder, 2, 3, [row('b')]);
    store(folder, 3, 3, [row('c')]);
    writeFileSync(join(folder, '.part-000001-of-000002.jsonl.host-1-ab.tmp'), 'half');
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    expect(mergeParts(folder, 'abc', ['a', 'b', 'c'])).toEqual({
      rows: [row('a'), row('b'), row('c')],
      damaged: [],
      of: 3,
    });
    expect(mergeParts(folder, 'abc', ['a', 'b', 'c', 'd']).rows[3]).toBe(null);
    store(folder, 1, 1, [row('b', 2)]);
    expect(() => mergeParts(folder, 'abc', ['a', 'b', 'c'])).toThrow(/another answer for b/);
  });

  it('refuses parts of another study', () => {
    const folder = emptyFolder();
    store(folder, 1, 1, [row('a')], 'xyz');
    expect(() => mergeParts(folder, 'abc', ['a'])).toThrow(/is of another study/);
  });
});

describe('cuptide sites', () => {
  const folder = emptyFolder();
  const table = join(folder, 'three.csv');
  const base = join(root, 'scenarios/1-commuter-bar.yaml');
  const run = (...more: string[]) =>
    cuptide(['sites', table, '--base', base, '--days', '10', ...more]);
  let whole: string;

  beforeAll(() => {
    writeFileSync(table, 'id,seats,guests\na,12,20\nb,14,24\nc,10,18\n');
    const ran = run('--json', '--date', '2027-01-11');
    expect(ran.err).toBe('');
    whole = ran.out;
  }, 120_000);

  it('gives the bytes of one process from parts; missing and damaged ones are named', () => {
    const out = join(folder, 'parts');
    const merge = () => run('--merge', '--out', out, '--json', '--date', '2027-01-11');
    expect(run('--part', '1/2', '--out', out).status).toBe(0);
    const missing = merge();
    expect([missing.status, missing.out]).toEqual([3, '2\n']);
    expect(run('--index', '1', '--parts', '3', '--out', out).status).toBe(0);
    // Units 0 and 2 are in part 1 of 2, unit 1 in part 2 of 3.
    const merged = merge();
    expect(merged.err).toBe('');
    expect(merged.out).toBe(whole);
    expect(readdirSync(out).filter((name) => name.startsWith('.'))).toEqual([]);

    const part = join(out, 'part-000001-of-000002.jsonl');
    const bytes = readFileSync(part);
    expect(run('--part', '1/2', '--out', out).out).toContain('already done');
    writeFileSync(part, bytes.subarray(0, 900));
    const damaged = merge();
    expect([damaged.status, damaged.out]).toEqual([3, '1,3\n']);
    expect(damaged.err).toContain('cut short');
    expect(run('--part', '1/2', '--out', out).status).toBe(0);
    expect(readFileSync(part).equals(bytes)).toBe(true);

    copyFileSync(part, join(out, 'part-000002-of-000002.jsonl'));
    const other = run('--part', '2/2', '--out', out, '--seed', 'other');
    expect([other.status, other.out]).toEqual([2, '']);
    expect(other.err).toContain('is of another study');
  });

  it('is worked out again by verify, which finds the one number that was altered, and another table', () => {
    const answer = JSON.parse(whole) as { totals: { cost: number } };
    const { cost } = answer.totals;
    const file = join(folder, 'sites.json');
    writeFileSync(
      file,
      JSON.stringify({ ...answer, totals: { ...answer.totals, cost: cost + 1 } }),
    );
    const again = (files: string) =>
      cuptide(['verify', file, '--scenario', base, '--files', files, '--json']);
    const found = again(folder);
    expect([found.status, found.err]).toEqual([1, '']);
    expect((JSON.parse(found.out) as { differences: unknown }).differences).toEqual([
      { place: 'totals.cost', printed: String(cost + 1), found: String(cost) },
    ]);
    // Its table has the JSON of all tables beside it.
    writeFileSync(join(folder, 'three.sites.json'), whole);
    const read = readScenario(readFileSync(base), base, { piecesPerRack: piecesPerRackOf });
    if (!read.ok) throw new Error('not read');
    const rows = siteRows(
      JSON.parse(whole) as SitesAnswer,
      contextOf(read.scenario, read.inputs, '', piecesPerRackOf),
    );
    const at = rows[0]!.findIndex((title) => String(title).startsWith('cost'));
    const right = Number(rows[2]![at]);
    rows[2]![at] = right + 1;
    const sheet = join(folder, 'three.sites.csv');
    writeFileSync(sheet, csvText(rows));
    const told = cuptide(['verify', sheet, '--scenario', base, '--files', folder, '--json']);
    expect([told.status, told.err]).toEqual([1, '']);
    expect((JSON.parse(told.out) as { differences: unknown }).differences).toEqual([
      {
        place: expect.stringMatching(/^row 3, cost/),
        printed: String(right + 1),
        found: String(right),
      },
    ]);
    const other = emptyFolder();
    writeFileSync(join(other, 'three.csv'), 'id,seats,guests\na,12,20\nb,14,24\nc,10,19\n');
    const refused = again(other);
    expect([refused.status, refused.err.replace(/\s+/g, ' ')]).toEqual([
      2,
      expect.stringContaining('three.csv: is not the file that'),
    ]);
  }, 120_000);

  it('refuses what cannot go together, and mistakes of the table, before any work', () => {
    const both = run('--part', '0/2', '--merge');
    expect([both.status, both.err]).toEqual([
      2,
      '--part: "0/2" is no part of a number of parts; write one such as 3/1000, from 1/1000 to 1000/1000\n',
    ]);
    const alone = run('--part', '1/2', '--estimate');
    expect(alone.status).toBe(2);
    expect(alone.err).toContain('--part needs --out');
  });
});
