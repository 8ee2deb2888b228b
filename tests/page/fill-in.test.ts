/** The sheet of a morning as a form: what is typed is read by the command's own reader, and mistakes find their boxes. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { blankForm } from '../../src/questions/measure/form.js';
import { NoAnswer, section } from '../../src/page/engine/questions.js';
import { Buffer as PlainBytes } from '../../src/page/engine/bytes-buffer.js';
import { cellKey, filledFile, headKey, type FillIn } from '../../src/questions/fill-in.js';
import { sheetFacts } from '../../src/questions/measure/facts.js';
import { sheetCsv } from '../../src/questions/measure/template.js';
import { editScenario } from '../../src/scenario/edit-scenario.js';
import { piecesPerRackOf } from '../../src/scenario/rack-geometry.js';
import { readScenario } from '../../src/scenario/read-scenario.js';
import { contextOf } from '../../src/tell/context-of.js';
import { valid } from '../scenario/a-scenario.js';

const demo = readFileSync('scenarios/1-commuter-bar.yaml', 'utf8');

function asking(text = demo) {
  const opened = readScenario(text, 'a.yaml', { piecesPerRack: piecesPerRackOf });
  if (!opened.ok) throw new Error('refused');
  const context = contextOf(opened.scenario, opened.inputs, '0', piecesPerRackOf);
  const days = { fileName: 'a.yaml', text, today: '2027-03-01' };
  return { ...days, opened, context, runner: inThisThread() };
}

const bytes = (text: string) => ({ name: 'sheet.csv', bytes: new TextEncoder().encode(text) });
const sheet = { offer: 'sheet', typed: {} };
const blank = async (): Promise<FillIn> => (await section(asking(), {}, sheet)).form!;

/** What somebody typed, by part, row and title of the column. */
function typedInto(form: FillIn, cells: readonly (readonly [string, number, string, string])[]) {
  const typed: Record<string, string> = { [headKey('date')]: '2026-01-15' };
  for (const [id, row, title, text] of cells) {
    const part = form.parts.find((one) => one.id === id)!;
    typed[
      cellKey(
        id,
        row,
        part.columns.findIndex(({ name }) => name === title),
      )
    ] = text;
  }
  return typed;
}

describe('the sheet as a form', () => {
  it('has the rows of the file that the command writes, cell for cell', async () => {
    const { opened, context } = asking();
    const facts = sheetFacts(opened.scenario, context, []);
    expect(await blank()).toEqual(blankForm(facts));
    expect(filledFile(blankForm(facts), {}, {}, true).text).toBe(sheetCsv(facts));
  });

  it('names mistakes at the line of their row; nothing comes of it', async () => {
    const form = await blank();
    const typed = typedInto(form, [
      ['tally', 2, 'in 1', '-3'],
      ['loads', 0, 'started', 'noon'],
      ['loads', 0, 'pieces', '7'],
    ]);
    const { text, places, filled } = filledFile(form, typed, {});
    expect(filled).toBe(2);
    const refused = section(asking(), {}, { ...sheet, table: bytes(text) });
    const { problems } = await refused.then(
      () => expect.fail('it was read'),
      (error: NoAnswer) => error,
    );
    expect(problems.map(({ path, line, message }) => [path, places.get(line), message])).toEqual([
      ['in 1', { part: 'tally', row: 2 }, '"-3" is negative; write 0 or more'],
      ['started', { part: 'loads', row: 0 }, '"noon" is not a time of day; write it as 08:05'],
    ]);
  });

  it('puts a file into the boxes as it is, and those boxes are that file again', async () => {
    const form = await blank();
    const typed = typedInto(form, [
      ['tally', 1, 'in 1', '9'],
      ['rounds', 0, 'began', '07:10'],
      ['loads', 0, 'cycle, s', '120'],
    ]);
    const { text } = filledFile(form, typed, {});
    const filled = await section(asking(), {}, { ...sheet, table: bytes(text), fill: true });
    expect(filledFile(filled.form!, {}, {}).text).toBe(text);
    expect(filled.edits).toBeUndefined();
    const odd = text.replace('in 2', 'inn 2');
    await expect(
      section(asking(), {}, { ...sheet, table: bytes(odd), fill: true }),
    ).rejects.toThrow(/"inn 2" is not a column of tally/);
  });

  it('makes what was counted measured, with its number, range and day', async () => {
    const small = valid;
    const form = (await section(asking(small), {}, sheet)).form!;
    const cells = [0, 1, 2, 3, 4, 5].map(
      (row) => ['loads', row, 'loading, s', String(28 + row)] as const,
    );
    const { text } = filledFile(form, typedInto(form, cells), {});
    const { edits, html } = await section(asking(small), {}, { ...sheet, table: bytes(text) });
    expect(html).toContain('What the sheet says');
    expect(edits).toMatchObject([
      { kind: 'set', basis: 'measured', source: expect.stringMatching(/^sheet of 2026-01-15, 6 /) },
    ]);
    const { inputs } = asking(editScenario(small, edits!)).opened;
    const { path } = edits![0]!;
    const input = inputs.find(({ at }) => at.join() === path.join());
    expect(input).toMatchObject({ basis: 'measured' });
    expect(input!.range).not.toBeNull();
  });
});

describe('plain bytes in place of Node’s', () => {
  it('do what the reader of tables asks of them as Node’s own do', () => {
    for (const of of ['', 'a', 'Café, 8:05\r\n', '\ufeffx', '€½']) {
      const [own, nodes] = [PlainBytes.from(of), Buffer.from(of)];
      expect([...own]).toEqual([...nodes]);
      expect(own.toString('utf8', 1, 3)).toBe(nodes.toString('utf8', 1, 3));
      for (const other of ['a', 'ab', 'Cafx'])
        expect(PlainBytes.compare(own, PlainBytes.from(other))).toBe(
          Buffer.compare(nodes, Buffer.from(other)),
        );
    }
    const [own, nodes] = [PlainBytes.allocUnsafe(4).fill(0), Buffer.alloc(4)];
    expect(PlainBytes.from('abcdef').copy(own, 1, 2, 6)).toBe(
      Buffer.from('abcdef').copy(nodes, 1, 2, 6),
    );
    expect([...own]).toEqual([...nodes]);
    expect(PlainBytes.from('\ufeff').compare(PlainBytes.from('\ufeffab'), 0, 3)).toBe(0);
    const joined = PlainBytes.concat([PlainBytes.from('a'), PlainBytes.from('bc')]);
    expect(joined.toString()).toBe('abc');
  });
});
