/** A section of the page that shows what is known while the rest is worked out. */
import { describe, expect, it } from 'vitest';
import { inThisThread } from '../../src/cafe/runner.js';
import { answerAsk } from '../../src/page/engine/answer-ask.js';
import { Stopped } from '../../src/page/engine/shared-days.js';
import { OpenQuestions } from '../../src/page/open-questions.js';
import type { Asked, Reply } from '../../src/page/messages.js';
import { scenarioStudy } from '../../src/questions/size/scenario-study.js';
import { idealised, steady } from '../published/scenario-of.js';
import { accepted } from '../scenario/a-scenario.js';

const asked: Asked = {
  fileName: 'a.yaml',
  text: JSON.stringify(
    idealised({
      ...steady(1, 20),
      seats: { count: 12 },
      alternatives: {
        slower: { change: { 'counter.making': '4 min' } },
        longer: { change: { 'guests.dwell': '12 min' } },
      },
    }),
  ),
  options: { days: 20 },
  look: { units: 'metric', locale: null },
};
const question = { kind: 'question', asked, offer: 'alternatives', typed: {} } as const;
const rowsIn = (html: string): number => html.split('<tr').length - 2;

describe('the alternatives, in the page', () => {
  it('come as they are worked out, marked as not final and without a verdict, and then whole', async () => {
    const said: Reply[] = [];
    await answerAsk(
      { version: '', neighbours: [] },
      question,
      () => true,
      (reply) => said.push(reply),
    );
    const shown = said.flatMap((reply) => (reply.kind === 'interim' ? [reply.html] : []));
    expect(shown.slice(0, 3).map(rowsIn)).toEqual([1, 2, 3]);
    for (const html of shown) {
      expect(html).toMatch(/So far, .*Not final: /);
      expect(html).not.toMatch(
        /costs (?:less|more)|too close to call|aria-live|role="(?:status|alert)"/,
      );
    }
    const last = said.at(-1)!;
    if (last.kind !== 'section') throw new Error('no section');
    expect(last.html).not.toContain('So far');
    expect(last.html).toContain('In short');
  });

  it('come no more once nobody wants them', async () => {
    let shown = 0;
    const run = answerAsk(
      { version: '', neighbours: [] },
      question,
      () => shown < 2,
      ({ kind }) => {
        if (kind === 'interim') shown += 1;
      },
    );
    await expect(run).rejects.toThrow(Stopped);
    expect(shown).toBe(2);
  });
});

describe('the answer that the letter has', () => {
  it('is that of the house as it is, where it was asked as the comparison is', async () => {
    const { answer } = await scenarioStudy(accepted(asked.text), inThisThread(), { days: 20 });
    const known = { ...answer, stock: answer.stock.map((line) => ({ ...line, pieces: 4321 })) };
    const sectionWith = async (options: Asked['options']): Promise<string> => {
      const said: Reply[] = [];
      await answerAsk(
        { version: '', neighbours: [] },
        { ...question, asked: { ...asked, options }, answer: known },
        () => true,
        (reply) => said.push(reply),
      );
      const last = said.at(-1)!;
      return last.kind === 'section' ? last.html : last.kind;
    };
    expect(await sectionWith({ days: 20 })).toContain('4,321');
    const { ware } = answer.stock[0]!;
    for (const other of [{ stock: { [ware]: 9 } }, { confidence: 0.95 }])
      expect(await sectionWith({ days: 20, ...other })).toMatch(/^(?!.*4,321).*In short/s);
  });
});

describe('what was shown so far', () => {
  const interim: Reply = { kind: 'interim', html: 'so far' };
  const section: Reply = { kind: 'section', html: 'whole' };
  const fault: Reply = { kind: 'fault', message: 'no' };

  it.each([
    ['is taken away where the rest does not come', [interim], ['so far', '']],
    ['is taken away where the rest goes wrong', [interim, fault], ['so far', null, '']],
    [
      'stands until the whole takes its place',
      [interim, interim, section],
      ['so far', 'so far', 'whole'],
    ],
    ['leaves an earlier answer where there was nothing of it', [], []],
  ])('%s', async (_, replies, shown) => {
    const heard: (string | null)[] = [];
    const engine = {
      async ask(_request: unknown, onReply: (reply: Reply) => void = () => {}) {
        replies.forEach(onReply);
      },
    };
    const ask = new OpenQuestions(engine, () => asked).add(question, (reply) =>
      reply.kind === 'anew' ? undefined : heard.push('html' in reply ? reply.html : null),
    );
    await ask();
    expect(heard).toEqual(shown);
  });
});
