/** Files as people and machines spoil them: real ones with values scaled, swapped, dropped, misspelt and torn. */
import fc from 'fast-check';
import { stringify } from 'yaml';

/** A change to a tree; `at` picks the place among all there are. */
type Op =
  | { readonly op: 'scale'; readonly at: number; readonly by: number }
  | { readonly op: 'put'; readonly at: number; readonly value: unknown }
  | { readonly op: 'drop'; readonly at: number }
  | { readonly op: 'twice'; readonly at: number }
  | { readonly op: 'swap'; readonly at: number; readonly with: number }
  | { readonly op: 'rename'; readonly at: number; readonly to: string };

export const CONTROL = '\u001b[31m\u0007';

/** Values that are wrong somewhere, and some that are right. */
const texts: readonly (readonly unknown[])[] = [
  ['', ' ', '0', '-1', '1e309', null, true, false, [], {}, 0, -1, 0.1, 3, 99, 1e300, 5e-324],
  ['0 s', '1 ms', '0.4 s', '1 s', '30 s', '7 min', '1e12 s', '30 days', '10 years', '-3 min'],
  ['about 5 min', 'about 0 s', 'about 1e9 h', 'unlimited', 'never', 'atOnce', 'takeaway'],
  ['0 %', '1e-9 %', '50 %', '99.9999 %', '100 %', '101 %', '-5 %', '0 / h', '1 / min'],
  ['60 / h', '1000000 / h', '1 EUR', '-1 EUR', '1e12 EUR', '3 XYZ', '3.999 EUR', '0 EUR'],
  ['00:00', '07:00', '12:30', '24:00', '25:00', '0 mm', '1 mm', '90 mm', '1e6 mm', '3 in'],
  ['makers', 'clearers', 'wait', 'leave', 'tea', 'cup', 'saucer', 'constructor', '__proto__'],
  [CONTROL, 'a\u0000b', '\u202eabc', '\u2028', 'x'.repeat(3000), 'é\u0301', '💥', '<script>'],
];
const laws: readonly unknown[] = [
  { exponential: '20 min' },
  { exponential: '0 s' },
  { lognormal: { mean: '1e15 min', sd: '1 min' } },
  { lognormal: { mean: '20 min', sd: '0 s' } },
  { lognormal: { mean: '1 s', sd: '1e9 s' } },
  { gamma: { mean: '5 min', sd: '10 h' } },
  { measured: [] },
  { measured: ['1 min', '50 min'] },
  { value: '5 min', basis: 'measured', range: ['1 min', '9 min'] },
  { value: 3, range: [9, 1] },
  [{ for: '60 min', staysIn: '30 %' }],
];
const values = fc.constantFrom<unknown>(...texts.flat(), ...laws);

const op: fc.Arbitrary<Op> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      op: fc.constant('scale' as const),
      at: fc.nat(),
      by: fc.constantFrom(0, 1e-6, 0.01, 0.3, 0.9, 1.1, 3, 20, 400, 1e6, -1),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ op: fc.constant('put' as const), at: fc.nat(), value: values }),
  },
  { weight: 1, arbitrary: fc.record({ op: fc.constant('drop' as const), at: fc.nat() }) },
  { weight: 1, arbitrary: fc.record({ op: fc.constant('twice' as const), at: fc.nat() }) },
  {
    weight: 1,
    arbitrary: fc.record({ op: fc.constant('swap' as const), at: fc.nat(), with: fc.nat() }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      op: fc.constant('rename' as const),
      at: fc.nat(),
      to: fc.constantFrom('x', 'cup', 'tea', '1', CONTROL, '__proto__', 'a.b', 'a b', ''),
    }),
  },
);

type Group = Record<string, unknown>;
const isGroup = (value: unknown): value is Group => typeof value === 'object' && value !== null;

/** Every place of a tree: whoever holds it, and its key. */
function places(tree: unknown, found: [Group, string][] = []): [Group, string][] {
  if (!isGroup(tree)) return found;
  for (const key of Object.keys(tree)) {
    found.push([tree, key]);
    places(tree[key], found);
  }
  return found;
}

const scaled = (value: unknown, by: number): unknown => {
  if (typeof value === 'number') return value * by;
  if (typeof value !== 'string' || /:/.test(value)) return value;
  return value.replace(/\d+(\.\d+)?/, (number) => String(Number(number) * by));
};

function apply(tree: Group, change: Op): void {
  const all = places(tree);
  if (all.length === 0) return;
  const [holder, key] = all[change.at % all.length]!;
  switch (change.op) {
    case 'scale': {
      // Of the places with a number, so that few are wasted.
      const numbers = all.filter(([owner, name]) => scaled(owner[name], 2) !== owner[name]);
      const [owner, name] = numbers[change.at % Math.max(1, numbers.length)] ?? [holder, key];
      owner[name] = scaled(owner[name], change.by);
      return;
    }
    case 'put':
      holder[key] = structuredClone(change.value);
      return;
    case 'drop':
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
      return;
    case 'twice':
      if (Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
      else holder[`${key}-2`] = structuredClone(holder[key]);
      return;
    case 'swap': {
      const [other, name] = all[change.with % all.length]!;
      const kept = structuredClone(holder[key]);
      holder[key] = structuredClone(other[name]);
      other[name] = kept;
      return;
    }
    case 'rename':
      if (!Array.isArray(holder)) {
        const kept = holder[key];
        delete holder[key];
        Object.defineProperty(holder, change.to, {
          value: kept,
          enumerable: true,
          writable: true,
          configurable: true,
        });
      }
  }
}

/** A tear in a text: some characters replaced. */
const tear = fc.record({
  at: fc.nat(),
  length: fc.nat(20),
  by: fc.constantFrom(
    '',
    ':',
    '"',
    '\n',
    '  ',
    '- ',
    '{',
    ']',
    '&a',
    '*a',
    '!!x',
    '#',
    '\t',
    '\u0000',
    CONTROL,
    '\ufeff',
    ',',
  ),
});
type Tear = typeof tear extends fc.Arbitrary<infer T> ? T : never;

const torn = (text: string, { at, length, by }: Tear): string => {
  const from = at % (text.length + 1);
  return `${text.slice(0, from)}${by}${text.slice(from + length)}`;
};

const tears: fc.Arbitrary<readonly Tear[]> = fc.oneof(
  { weight: 8, arbitrary: fc.constant<readonly Tear[]>([]) },
  { weight: 1, arbitrary: fc.array(tear, { minLength: 1, maxLength: 3 }) },
);

/** Texts made from one of some trees. */
export function spoilt(
  trees: readonly Group[],
  write: (tree: unknown) => string = (tree) => stringify(tree, { lineWidth: 0 }),
): fc.Arbitrary<string> {
  return fc
    .record({
      tree: fc.nat(trees.length - 1),
      ops: fc.array(op, { minLength: 0, maxLength: 4 }),
      tears,
    })
    .map(({ tree: which, ops, tears: holes }) => {
      const tree = structuredClone(trees[which]!);
      for (const one of ops) apply(tree, one);
      return holes.reduce<string>(torn, write(tree));
    });
}

/** Cells that are wrong somewhere. */
const cells = fc.constantFrom(
  '',
  '-1',
  '1e9',
  '0',
  'x',
  '12:99',
  '07.40',
  '=1+1',
  '1,5',
  CONTROL,
  '9'.repeat(400),
);

/** A cell of another row in the same column: likely to fit, and rarely true. */
interface Other {
  readonly row: number;
}
const otherCell: fc.Arbitrary<Other> = fc.record({ row: fc.nat() });

/** Which rows stay: mostly all where their order matters, as parts of a sheet that lack a row are refused at once. */
function rowsKept(places: number[], inOrder: boolean): fc.Arbitrary<number[]> {
  if (!inOrder) return fc.shuffledSubarray(places, { minLength: Math.min(3, places.length) });
  return fc.oneof(
    { weight: 3, arbitrary: fc.constant(places) },
    { weight: 1, arbitrary: fc.subarray(places, { minLength: Math.max(0, places.length - 2) }) },
  );
}

/** Tables with rows left out or moved, cells of other rows or wrong ones, and tears. @param inOrder rows stay in their order, as parts of a sheet do */
export const spoiltTable = (
  rows: readonly string[],
  inOrder: boolean = false,
): fc.Arbitrary<string> =>
  fc
    .record({
      kept: rowsKept([...rows.keys()], inOrder),
      put: fc.array(
        fc.record({
          row: fc.nat(),
          cell: fc.nat(),
          by: fc.oneof(
            { weight: inOrder ? 5 : 1, arbitrary: otherCell },
            { weight: 1, arbitrary: cells },
          ),
        }),
        { maxLength: 3 },
      ),
      holes: inOrder ? tears : fc.array(tear, { maxLength: 3 }),
      ends: fc.constantFrom('\n', '\r\n', '\r'),
    })
    .map(({ kept, put, holes, ends }) => {
      const lines = [rows[0]!, ...kept.filter((row) => row > 0).map((row) => rows[row]!)];
      const cellsOf = (row: number): string[] => lines[row % lines.length]!.split(',');
      for (const { row, cell, by } of put) {
        const parts = cellsOf(row);
        const at = cell % parts.length;
        parts[at] = typeof by === 'string' ? by : (cellsOf(by.row)[at] ?? '');
        lines[row % lines.length] = parts.join(',');
      }
      return holes.reduce<string>(torn, lines.join(ends));
    });
