/** The progress bar: what is said to be left is never less than what is then run, and not far more. */
import { expect, it } from 'vitest';
import { candidatesOf } from '../../../src/questions/compare/alternatives.js';
import { compareStudy, type CompareOptions } from '../../../src/questions/compare/study.js';
import { inThisThread, type Runner } from '../../../src/cafe/runner.js';
import { piecesPerRackOf } from '../../../src/scenario/rack-geometry.js';
import { opened, scenarioNames } from '../sections/answers.js';

const reading = { piecesPerRack: piecesPerRackOf };

it.each([
  ['the alternatives of the file', true, {}],
  ['the usual questions', false, { usual: true, noLevel: true }],
  ['a map and what moves the order', false, { map: true, moves: true, seats: [20, 30] }],
] as const)(
  'says how many days may follow before they are run: %s',
  async (_, whole, options) => {
    const demo = opened(scenarioNames[0]!);
    const { alternatives: _all, ...alone } = demo.scenario;
    const candidates = candidatesOf(whole ? demo : { ...demo, scenario: alone }, 'demo', reading);
    if (!candidates.ok) throw new Error(candidates.problems[0]!.message);
    // Few alternatives, one of them a machine more and one no choice.
    const few = candidates.all.filter(({ id }) =>
      ['base', 'second-machine', 'machine-down'].includes(id),
    );
    let [done, saidAtFirst] = [0, 0];
    const said: { readonly at: number; readonly most: number }[] = [];
    const counting: Runner = {
      ...inThisThread((days) => (done += days)),
      expect(most) {
        if (saidAtFirst === 0) {
          expect(done).toBe(0);
          saidAtFirst = most;
        }
        said.push({ at: done, most });
      },
    };
    await compareStudy(few, counting, {
      days: 20,
      ...reading,
      ...(options as CompareOptions),
    });
    for (const { at, most } of said) expect(done - at).toBeLessThanOrEqual(most);
    expect(saidAtFirst).toBeLessThan(2.5 * done);
  },
  120_000,
);
