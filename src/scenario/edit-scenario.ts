/**
 * Changing a scenario file by its paths: the text with other values in it, all else as it was written.
 *
 * Every change is checked: what the new text says must be what was asked for, and nothing more; a change
 * that cannot be made so is refused with its reason.
 */
import { withMean } from '../quantities/law-text.js';
import { fill } from './defaults.js';
import { readFlow } from './flow-text.js';
import { MARK_KEYS } from './name-maps.js';
import { parseYaml } from './parse-yaml.js';
import { EditRefused, refuse, type Edit } from './edit.js';
import { isWithin, type Path } from './path.js';
import { inOrder, problem, problemAt, type Problem } from './problems.js';
import { readScenario, type ReadOptions } from './read-scenario.js';
import { scenarioSchema } from './scenario.js';
import { knownKeys } from './schema-walk.js';
import { markInText, removeFromText, setInText } from './splice.js';
import { styleOf, written, type Written } from './text-places.js';
import { same } from './same.js';
import { isGroup, listGap, unwrap, valueAt, withValueAt } from './tree.js';
import { withoutSharing } from './unshare.js';
import { stepsWithout } from './uses.js';
import { widenedRange } from './widened-range.js';

/** The file on the way through its changes: its text, and what that text is to say. */
interface State extends Written {
  readonly tree: unknown;
}

/**
 * The text of a scenario after the changes, one after the other. Comments, order, quotes and blank lines
 * stay; so does JSON. A value that other places share (by an alias) is written out first, so that these keep theirs.
 * @throws EditRefused where a change cannot be made; its flaws say why
 */
export function editScenario(text: string, edits: readonly Edit[]): string {
  const byteOrderMark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
  const before = written(text.slice(byteOrderMark.length));
  if (before.document().errors.length > 0) return refuseAll(text);
  const after = edits.reduce(edited, {
    ...before,
    tree: before.document().toJS({ maxAliasCount: 5000 }) as unknown,
  });
  const parse = parseYaml(after.text);
  if (
    !parse.ok ||
    !same(parse.parsed.tree, after.tree) ||
    (styleOf(before.text) === 'json' && styleOf(after.text) !== 'json')
  ) {
    if (!parse.ok) refuseAll(text);
    return refuse(
      edits.at(-1)?.path ?? [],
      undefined,
      'cannot be changed here without changing the lines around it',
      'change it in the text of the file',
    );
  }
  return byteOrderMark + after.text;
}

/** Refuses to change a file that has mistakes of its own. */
function refuseAll(text: string): never {
  const parse = parseYaml(text);
  throw new EditRefused(
    parse.ok
      ? [
          problemAt(
            [],
            undefined,
            'cannot be changed this way',
            'change it in the text of the file',
          ),
        ]
      : parse.flaws,
  );
}

function edited(state: State, edit: Edit): State {
  const { path } = edit;
  if (path.length === 0)
    return refuse(path, undefined, 'cannot be replaced as a whole', 'change one of its values');
  switch (edit.kind) {
    case 'rename':
      return setValue(state, [...path, 'name'], edit.name);
    case 'remove':
      return removed(state, path);
    case 'retire':
      return stepsWithout(unwrap(state.tree).tree, path, edit.instead).reduce<State>(edited, state);
    case 'add':
      return added(state, path, edit.value);
    case 'set': {
      const { basis, range, source } = edit;
      const marks = {
        ...(basis === undefined ? {} : { basis }),
        ...(range === undefined
          ? {}
          : { range: isGroup(range) ? typed(String(range['flow']), path) : range }),
        ...(source === undefined ? {} : { source }),
      };
      const value = 'flow' in edit ? typed(edit.flow, path) : wantedValue(state, edit);
      const valued = value === undefined ? state : setValue(state, path, value);
      if (value !== undefined && range === undefined) Object.assign(marks, widened(valued, path));
      return Object.keys(marks).length === 0 ? valued : setMarks(valued, path, marks);
    }
  }
}

/** The value as it is to stand in the file: where a law stands and a mean is given, that law with the mean. */
function wantedValue(
  { tree }: State,
  { path, value, asMean }: { path: Path; value?: unknown; asMean?: boolean },
): unknown {
  return asMean === true && typeof value === 'string'
    ? withMean(valueAt(fill(unwrap(tree).tree).tree, path), value)
    : value;
}

/** A mark's range that its value has left goes along as far as the value. */
function widened({ tree }: State, path: Path): { readonly range?: readonly [unknown, unknown] } {
  const { tree: plain, wraps } = unwrap(tree);
  const range =
    wraps.find((wrap) => wrap.path.length === path.length && isWithin(wrap.path, path))?.range ??
    null;
  const wide = range === null ? null : widenedRange(fill(plain).tree, path, range);
  return wide === null ? {} : { range: wide };
}

function added(state: State, path: Path, value: unknown): State {
  const there = valueAt(state.tree, ownerInFile(state, path));
  return there === undefined || same(there, value)
    ? setValue(state, path, value)
    : refuse(path, path.at(-1), 'already exists', 'choose another name');
}

function typed(line: string, path: Path): unknown {
  const read = readFlow(line, path);
  if (!read.ok) throw new EditRefused([read.flaw]);
  return read.value;
}

/** Where a path stands in the file, marks entered; and where its mark stands, if it has one. */
function inFile(tree: unknown, path: Path): { readonly value: Path; readonly mark: Path | null } {
  const { wraps, filePath } = unwrap(tree);
  const value = filePath(path);
  return {
    value,
    mark: wraps.some((wrap) => wrap.path.length === path.length && isWithin(wrap.path, path))
      ? value.slice(0, -1)
      : null,
  };
}

const ownerInFile = ({ tree }: State, path: Path): Path => {
  const { value, mark } = inFile(tree, path);
  return mark ?? value;
};

const orderOf = (tree: unknown) => {
  const { wraps } = unwrap(tree);
  return (path: Path): readonly string[] =>
    wraps.some((wrap) => isWithin(path, wrap.path)) ? [] : knownKeys(scenarioSchema, path);
};

/** Makes a change of text, once nothing else shares the place. */
function made(
  state: State,
  at: Path,
  wanted: unknown,
  change: (own: Written) => string | null,
): State {
  const own = withoutSharing(state, at, state.tree);
  const next = own === null ? null : change(own);
  if (next === null)
    return refuse(
      at,
      undefined,
      'cannot be changed here without changing the lines around it',
      'change it in the text of the file',
    );
  return { ...written(next), tree: wanted };
}

function setValue(state: State, path: Path, value: unknown): State {
  const { tree } = state;
  const whole = wholeDefault(tree, path);
  if (whole !== null)
    return setValue(
      state,
      whole.path,
      withValueAt(whole.value, path.slice(whole.path.length), value),
    );
  const { value: at } = inFile(tree, path);
  if (same(valueAt(tree, at), value)) return state;
  const gap = listGap(tree, at);
  if (gap !== null)
    return refuse(path, value, 'is beyond the end of its list', `the next place is [${gap}]`);
  return made(state, at, withValueAt(tree, at, value), (own) =>
    setInText(own, at, value, orderOf(tree)),
  );
}

/** A default of several parts, of which one is to change: it is written as a whole. */
function wholeDefault(
  tree: unknown,
  path: Path,
): { readonly path: Path; readonly value: unknown } | null {
  const plain = unwrap(tree).tree;
  const wrap = fill(plain).wraps.find(
    (one) => one.path.length < path.length && isWithin(path, one.path),
  );
  return wrap !== undefined && valueAt(plain, wrap.path) === undefined
    ? { path: wrap.path, value: wrap.value }
    : null;
}

function removed(state: State, path: Path): State {
  const at = ownerInFile(state, path);
  if (valueAt(state.tree, at) === undefined)
    return refuse(path, undefined, 'is not in the file', 'there is nothing to remove');
  return made(state, at, without(state.tree, at), (own) => removeFromText(own, at));
}

function without(tree: unknown, at: Path): unknown {
  const [parent, key] = [at.slice(0, -1), at.at(-1)!];
  const owner = valueAt(tree, parent);
  const rest = Array.isArray(owner)
    ? owner.filter((_, index) => index !== Number(key))
    : Object.fromEntries(Object.entries(owner as object).filter(([one]) => one !== String(key)));
  return withValueAt(tree, parent, rest);
}

function setMarks(state: State, path: Path, marks: Readonly<Record<string, unknown>>): State {
  const { tree } = state;
  const { value, mark } = inFile(tree, path);
  const given = Object.entries(marks);
  const isOff = (one: unknown): boolean => one === null || one === '';
  if (mark === null) {
    const fresh = Object.fromEntries(given.filter(([, one]) => !isOff(one)));
    if (Object.keys(fresh).length === 0) return state;
    const present = valueAt(tree, value);
    if (present === undefined) {
      const filled = valueAt(fill(unwrap(tree).tree).tree, path);
      if (filled === undefined)
        return refuse(path, undefined, 'has no value to mark', 'give the value too');
      return setMarks(setValue(state, path, filled), path, marks);
    }
    return made(state, value, withValueAt(tree, value, { value: present, ...fresh }), (own) =>
      markInText(own, value, fresh),
    );
  }
  return given.reduce((sofar, [name, one]) => {
    const at = [...mark, name];
    const there = valueAt(sofar.tree, at);
    if (isOff(one))
      return there === undefined
        ? sofar
        : made(sofar, at, without(sofar.tree, at), (own) => removeFromText(own, at));
    if (same(there, one)) return sofar;
    return made(sofar, at, withValueAt(sofar.tree, at, one), (own) =>
      setInText(own, at, one, () => MARK_KEYS),
    );
  }, state);
}

export type Checked =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Changes a scenario and reads it again: the new text if it is a scenario, else every problem it has,
 * each with the path of the box it belongs to.
 */
export function checkEdit(
  text: string,
  fileName: string,
  edits: readonly Edit[],
  options: ReadOptions = {},
): Checked {
  let changed: string;
  try {
    changed = editScenario(text, edits);
  } catch (error) {
    if (!(error instanceof EditRefused)) throw error;
    const parse = parseYaml(text);
    const place = (path: Path) => parse.parsed?.positionOf(path) ?? { line: 1, column: 1 };
    return {
      ok: false,
      problems: inOrder(error.flaws.map((flaw) => problem(flaw, fileName, place(flaw.path)))),
    };
  }
  const read = readScenario(changed, fileName, options);
  return read.ok ? { ok: true, text: changed } : { ok: false, problems: read.problems };
}
