// What came of the changes that were tried, for reports/mutation.json.
import { equivalent } from './equivalent.mjs';
import { isDigest } from './tests.mjs';

const at = ({ file, line, from, to, code }) => ({ file, line, from, to, code });
const count = (list, is) => list.filter(is).length;

/** What a test said, without where on this machine the copy lies. */
const withoutPlace = (text) => text.replaceAll(/\/\S*\/copy(?:-\w+)?\//g, '');

/** @param results of `run.mjs`, in the order drawn */
export function figuresOf(study) {
  const { places, chosen, sources, tests, results } = study;
  // A change that no digest saw is under way until other tests have met it, and one that gave no other program was none.
  const underWay = (one) =>
    one.caught === null &&
    !equivalent(one) &&
    one.met.every((file) => isDigest(file.split('@')[0]));
  const tried = results.filter((one) => one.caught !== 'same' && !underWay(one));
  const survivors = tried.filter(({ caught }) => caught === null);
  const argued = survivors.filter(equivalent);
  const isCaught = ({ caught }) => caught !== null;
  const byDigest = ({ by }) => by !== null && isDigest(by);
  const folderOf = ({ file }) => file.split('/')[1];
  const sums = (some) => ({
    tried: some.length,
    caught: count(some, isCaught),
    equivalent: count(some, (one) => argued.includes(one)),
    survived: count(some, (one) => !isCaught(one) && !argued.includes(one)),
  });
  const folders = [...new Set(sources.map((file) => folderOf({ file })))];
  const commits = (of) => [...new Set(results.flatMap((one) => one[of] ?? []))];
  return {
    // The commits whose sources the changes, and those that a digest caught, were tried in.
    sourcesOf: commits('commit'),
    sourcesOfByDigest: commits('beyondIn'),
    places: places.length,
    drawn: chosen.length,
    noOtherProgram: count(results, ({ caught }) => caught === 'same'),
    underWay: count(results, underWay),
    ...sums(tried),
    folders: Object.fromEntries(
      folders.map((folder) => [folder, sums(tried.filter((one) => folderOf(one) === folder))]),
    ),
    caughtBy: {
      assertion: count(tried, ({ caught }) => caught === 'assertion'),
      error: count(tried, ({ caught }) => caught === 'error'),
      time: count(tried, ({ caught }) => caught === 'time'),
      memory: count(tried, ({ caught }) => caught === 'memory'),
    },
    // A digest sees any change of the bytes and does not say that it is wrong. Of those it caught, so many were then tried by tests
    // of the same folder and near ones that are no digests; those that none of these caught are listed.
    byDigest: count(tried, byDigest),
    byDigestTriedByOthers: count(tried, ({ beyond }) => beyond !== undefined),
    byDigestAlone: tried.filter(({ beyond }) => beyond === null).map(at),
    processorSeconds: Math.round(tried.reduce((sum, { seconds }) => sum + seconds, 0)),
    equivalents: argued.map((one) => ({ ...at(one), because: equivalent(one) })),
    survivors: survivors.filter((one) => !argued.includes(one)).map(at),
    testFiles: count([...tests.unchanged.values()], ({ passed }) => passed),
    leftOut: [...tests.unchanged.values()]
      .filter(({ passed }) => !passed)
      .map(({ file, why }) => ({ file, because: withoutPlace(why).slice(0, 200) })),
  };
}
