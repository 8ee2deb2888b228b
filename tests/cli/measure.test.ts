/** Measuring as a person does it: a sheet that is wrong leaves nothing behind, a good one a new scenario, once. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cuptide, emptyFolder } from './run.js';

const tally = (row: string): string => `sheet,cuptide measure
house,Tern & Tide
date,2026-01-15

tally
from,in 1,in 2,in 3,in 4+,out 1,out 2,out 3,out 4+,away 1,away 2,away 3,away 4+,first drinks,second drinks,seats taken
07:00,9,9,0,0,2,0,0,0,20,5,0,0,29,2,
${row}
`;

describe('cuptide measure', () => {
  it('writes a new scenario from a sheet, never over a file, and nothing from a bad one', () => {
    const folder = emptyFolder();
    const [good, bad] = [join(folder, 'good.csv'), join(folder, 'bad.csv')];
    writeFileSync(good, tally('07:15,3,3,1,0,5,6,0,0,10,5,2,0,12,1,'));
    writeFileSync(bad, tally('07:45,-3,3,1,0,25,6,0,0,10,5,2,0,12,1,'));
    const out = join(folder, 'out');
    const run = (...sheets: string[]) =>
      cuptide([
        'measure',
        'scenarios/1-commuter-bar.yaml',
        ...sheets.flatMap((sheet) => ['--read', sheet]),
        '--out',
        out,
        '--days',
        '20',
        '--threads',
        '1',
      ]);
    const wrong = run(bad, good);
    expect([wrong.status, wrong.out]).toEqual([2, '']);
    expect(wrong.err).toMatch(/bad\.csv:8: in 1: "-3" is negative; write 0 or more/);
    expect(wrong.err).toMatch(/bad\.csv:8: from: "07:45" leaves a gap after 07:00; .*07:15 next/);
    expect(wrong.err).toMatch(
      /bad\.csv:8: out 1: "25" is 18 more than can have sat there by 08:00/,
    );
    expect(wrong.err).toMatch(/3 problems; nothing was done/);
    const right = run(good);
    expect([right.status, right.err]).toEqual([0, '']);
    expect(right.out).toContain('Drinks per guest');
    expect(readdirSync(out).toSorted()).toEqual([
      '1-commuter-bar.measured.counted-shares.svg',
      '1-commuter-bar.measured.yaml',
      '1-commuter-bar.reading.json',
    ]);
    const text = readFileSync(join(out, '1-commuter-bar.measured.yaml'), 'utf8');
    expect(text).toMatch(
      /partySize: \{ value: .*basis: measured, .*source: "sheet of 2026-01-15, 67 parties counted"/,
    );
    const again = run(good);
    expect(again.status).toBe(2);
    expect(again.err).toContain('is there already');
    expect(readFileSync(join(out, '1-commuter-bar.measured.yaml'), 'utf8')).toBe(text);
  });
});
