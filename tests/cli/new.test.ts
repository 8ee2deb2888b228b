import { PassThrough, Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { ask } from '../../src/cli/write-starter.js';

describe('the questions of cuptide new', () => {
  const asked = async (typed: readonly string[]) => {
    const said = new PassThrough();
    const answers = await ask(['name', 'seats', 'stay'], Readable.from(typed), said);
    return { answers, said: String(said.read() ?? '') };
  };

  it('takes answers pasted all at once, in the order of the questions', async () => {
    const { answers, said } = await asked(['Corner\n30\n45 %\n']);
    expect(answers).toEqual({ name: 'Corner', seats: '30', stay: '45 %' });
    expect(said).toMatch(/called\?.*seats.*stay in\?/s);
  });

  it('takes the usual answer for an empty line, and asks again after one that will not do', async () => {
    const { answers, said } = await asked(['\n', 'many\n', '12\n', '140 %\n', '40 %\n']);
    expect(answers).toEqual({ name: 'My café', seats: '12', stay: '40 %' });
    expect(said).toMatch(/"many" is no whole number of seats\./);
    expect(said).toMatch(/"140 %" is no share/);
  });

  it('says so where the answers end too soon', async () => {
    await expect(asked(['Corner\n'])).rejects.toThrow(
      /end before the last question; nothing was written/,
    );
  });
});
