// What the tests import as 'vitest' in the copy: the same expectations, without the runner, which takes seconds to start.
// Only what the tests of the house use; anything else is missing and its file fails unchanged, so it is left out and named.
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  chai,
  setState,
} from '@vitest/expect';

chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

export const expect = (value, message) => chai.expect(value, message);
Object.assign(expect, chai.expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
expect.extend = (matchers) => chai.expect.extend(expect, matchers);
setState({ assertionCalls: 0 }, expect);

const group = (name, outer) => ({ name, outer, before: [], after: [], beforeEach: [], tests: [] });
let current = group('', null);

const argumentsOf = (row) => (Array.isArray(row) ? row : [row]);
/** @param add takes a name and a function */
const withRows = (add) =>
  Object.assign((name, ...rest) => add(name, rest), {
    each: (rows) => (name, made) =>
      [...rows].forEach((row) => {
        const given = argumentsOf(row);
        add(name.replace('%s', given[0]), [() => made(...given)]);
      }),
  });

const tests = () =>
  withRows((name, rest) =>
    current.tests.push({ name, run: rest.find((one) => typeof one === 'function') }),
  );
export const it = tests();
export const test = tests();

const toFill = [];
export const describe = withRows((name, rest) => {
  const own = group(name, current);
  current.tests.push(own);
  toFill.push({ own, fill: rest.find((one) => typeof one === 'function') });
});

export const beforeAll = (run) => current.before.push(run);
export const afterAll = (run) => current.after.unshift(run);
export const beforeEach = (run) => current.beforeEach.push(run);

async function runGroup(own, path, outerEach, begins) {
  const each = [...outerEach, ...own.beforeEach];
  for (const run of own.before) await run();
  for (const one of own.tests) {
    const name = [...path, one.name].filter(Boolean).join(' > ');
    if (one.tests !== undefined) {
      await runGroup(one, [...path, one.name], each, begins);
      continue;
    }
    begins();
    try {
      for (const run of each) await run();
      await one.run();
    } catch (error) {
      throw Object.assign(new Error(name), { cause: error });
    }
  }
  for (const run of own.after) await run();
}

/** Runs the tests of a file in their order. @param begins is called before each @throws Error of the first that fails, by its name */
export async function runFile(load, begins) {
  const whole = group('', null);
  current = whole;
  await load();
  while (toFill.length > 0) {
    const { own, fill } = toFill.shift();
    current = own;
    await fill();
  }
  await runGroup(whole, [], [], begins);
}
