/**
 * Scenario file → scenario, or every problem it has: text → tree → unwrapped → filled → checked.
 */
import { rackKind } from '../catalogue/catalogue.js';
import type { Warning } from '../quantities/flaw.js';
import { checkBounds } from './check-bounds.js';
import { crossChecks, otherCurrency } from './checks.js';
import { fill } from './defaults.js';
import { inputsOf, type Input } from './inputs.js';
import { readKinds } from './kinds.js';
import { parseYaml } from './parse-yaml.js';
import { isWithin, type Path } from './path.js';
import { familyOf, rackFill, rackKindOf, type PiecesPerRack } from './pieces-per-rack.js';
import { inOrder, problem, problemAt, type Flaw, type Position, type Problem } from './problems.js';
import { misfitOf } from './rack-geometry.js';
import { withRackPlan } from './rack-plan.js';
import { misfitWarnings } from './saucer-fits.js';
import { scenarioSchema, type Scenario } from './scenario.js';
import { tooMany } from './too-many.js';
import { unwrap, valueAt, withValueAt, type Unwrapped, type Wrap } from './tree.js';
import { schemaOfField, valueSize } from './value-size.js';
import { warningsOf } from './warnings.js';
import { flawsOf } from './zod-flaws.js';

export interface ReadOptions {
  /** Computes pieces per rack from a ware's shape, where the file gives none. */
  readonly piecesPerRack?: PiecesPerRack;
}

export type ReadResult =
  | {
      readonly ok: true;
      readonly scenario: Scenario;
      readonly inputs: readonly Input[];
      readonly warnings: readonly Warning[];
      /** The tree as in the file, marks and all; what alternatives change. */
      readonly raw: unknown;
      readonly positionOf: PositionOf;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Where a path of the raw tree stands in a file; `onKey`: its key rather than its value. */
export type PositionOf = (path: Path, onKey?: boolean) => Position;

/** Reads and checks a scenario: YAML or JSON text, or its bytes. Pure: `fileName` only names the place of problems. */
export function readScenario(
  text: string | Uint8Array,
  fileName: string,
  options: ReadOptions = {},
): ReadResult {
  const parse = parseYaml(text);
  if (parse.ok) return checkTree(parse.parsed.tree, parse.parsed.positionOf, fileName, options);
  const own = parse.flaws.map((flaw) => problem(flaw, fileName, flaw.position));
  const rest =
    parse.parsed === null
      ? null
      : checkTree(parse.parsed.tree, parse.parsed.positionOf, fileName, options);
  return {
    ok: false,
    problems: inOrder([...own, ...(rest === null || rest.ok ? [] : rest.problems)]),
  };
}

/**
 * Checks a scenario given as a tree (with marked values), such as a changed copy of one that was
 * read: `positionOf` tells where the problems of a path are to be shown.
 */
export function checkTree(
  raw: unknown,
  positionOf: PositionOf,
  fileName: string,
  options: ReadOptions = {},
): ReadResult {
  const many = tooMany(raw);
  if (many.length > 0)
    return {
      ok: false,
      problems: many.map((flaw) => problem(flaw, fileName, positionOf(flaw.path))),
    };
  const unwrapped = unwrap(raw);
  const filled = fill(unwrapped.tree);
  const parsed = scenarioSchema.safeParse(filled.tree);
  const flaws = [
    ...unwrapped.flaws,
    ...flawsOf(parsed.success ? [] : parsed.error.issues, scenarioSchema, filled.tree),
    ...crossChecks(filled.tree),
    ...unwrapped.wraps.flatMap((wrap) => checkRange(wrap, filled.tree, parsed.data, unwrapped)),
    ...(parsed.success
      ? [
          ...checkBounds(parsed.data),
          ...checkFits(withRackPlan(parsed.data, options.piecesPerRack), options.piecesPerRack),
        ]
      : []),
  ].filter((flaw, _, all) => !followsFromAnother(flaw, all));
  if (flaws.length > 0 || !parsed.success) {
    const place = (flaw: Flaw): Position =>
      positionOf(flaw.file ?? unwrapped.filePath(flaw.path), flaw.onKey);
    return {
      ok: false,
      problems: inOrder(flaws.map((flaw) => problem(flaw, fileName, place(flaw)))),
    };
  }
  const scenario = withRackPlan(parsed.data, options.piecesPerRack);
  const inputs = [
    ...inputsOf(scenarioSchema, filled.tree, unwrapped.wraps, filled.wraps),
    ...typicalFills(scenario, options.piecesPerRack),
  ];
  const { kinds, problems } = readKinds({
    raw,
    scenario,
    inputs,
    positionOf,
    fileName,
    check: (tree, at) => checkTree(tree, at, fileName, options),
  });
  if (problems.length > 0) return { ok: false, problems: inOrder(problems) };
  return {
    ok: true,
    scenario: kinds.length === 0 ? scenario : { ...scenario, kinds },
    inputs,
    warnings: [...warningsOf(scenario), ...misfitWarnings(scenario, inputs)],
    raw,
    positionOf,
  };
}

/**
 * A mistake that goes away with another one: fields that a class would have filled are not missing
 * but wait for the class to be named right, and a law whose name is misspelt is not unnamed.
 */
function followsFromAnother(flaw: Flaw, all: readonly Flaw[]): boolean {
  if (flaw.rule === 'does not name a distribution')
    return all.some(
      ({ path, onKey }) =>
        onKey === true && path.length === flaw.path.length + 1 && isWithin(path, flaw.path),
    );
  if (!flaw.rule.startsWith('is missing')) return false;
  const owner = flaw.path.slice(0, -1);
  return all.some(
    ({ path, rule }) =>
      rule.startsWith('is not a class of') &&
      path.length === owner.length + 1 &&
      isWithin(path, owner),
  );
}

/** Both ends of a range must be valid at its place, and the value must lie between them. */
function checkRange(
  wrap: Wrap,
  tree: unknown,
  scenario: Scenario | undefined,
  { filePath }: Unwrapped,
): Flaw[] {
  if (wrap.range === null) return [];
  const inFile = filePath(wrap.path).slice(0, -1);
  const at = (end: 0 | 1): Pick<Flaw, 'path' | 'file'> => ({
    path: [...wrap.path, 'range', end],
    file: [...inFile, 'range', end],
  });
  const schema = schemaOfField(wrap.path[0]) ?? scenarioSchema;
  const ends = ([0, 1] as const).map((end) => {
    const changed = withValueAt(tree, wrap.path, wrap.range![end]);
    const parsed = schema.safeParse(
      schema === scenarioSchema
        ? changed
        : { [wrap.path[0]!]: valueAt(changed, wrap.path.slice(0, 1)) },
    );
    const flaws = [
      ...flawsOf(parsed.success ? [] : parsed.error.issues, schema, changed),
      ...otherCurrency(wrap.path, wrap.range![end], changed),
    ].filter((flaw) => isWithin(flaw.path, wrap.path));
    return {
      flaws: flaws.map((flaw) => ({ ...flaw, ...at(end) })),
      size: parsed.success ? valueSize(valueAt(parsed.data, wrap.path)) : null,
    };
  });
  const flaws = ends.flatMap((end) => end.flaws);
  const [low, high] = [ends[0]!.size, ends[1]!.size];
  if (flaws.length > 0 || low === null || high === null) return flaws;
  // Sums of shares, such as those of party sizes, differ by dust alone.
  const dust = 1e-9 * Math.abs(high);
  if (low > high + dust)
    return [
      {
        ...problemAt(
          [],
          undefined,
          'has its ends the wrong way round',
          'write the lowest plausible value first',
        ),
        path: [...wrap.path, 'range'],
        file: [...inFile, 'range'],
      },
    ];
  const middle = valueSize(valueAt(scenario, wrap.path));
  if (middle === null || (middle >= low - dust && middle <= high + dust)) return [];
  return [
    problemAt(
      wrap.path,
      wrap.value,
      'is outside its own range',
      'widen the range or correct the value',
    ),
  ];
}

const fillsOf = (scenario: Scenario, piecesPerRack?: PiecesPerRack) =>
  Object.entries(scenario.ware).map(([id, ware]) => {
    const kind = rackKindOf(scenario.racks, familyOf(id, ware));
    return { id, kind, fill: rackFill(ware, kind, scenario.racks, piecesPerRack) };
  });

/** Every ware must fit the rack it is washed in. */
function checkFits(scenario: Scenario, piecesPerRack?: PiecesPerRack): Flaw[] {
  return fillsOf(scenario, piecesPerRack).flatMap(({ id, kind, fill: found }): Flaw[] => {
    const path: Path = ['ware', id];
    // Of a kind that is not listed, `checkRacks` has said it.
    if (found === null && rackKind(kind) === null) return [];
    if (found === null)
      return [
        {
          ...problemAt(
            [...path, 'perRack'],
            undefined,
            `is missing: neither its shape nor its class says how many fill a rack of the kind ${kind}`,
            'count the pieces in a full rack and write perRack: 16',
          ),
        },
      ];
    if (found.pieces > 0) return [];
    const why = misfitOf(scenario.ware[id]!, kind, scenario.racks);
    const place: Path = why === null ? path : [...path, why.field];
    const rule = `does not fit a rack of the kind ${kind}, so it could never be washed${why === null ? '' : `: ${why.rule}`}`;
    return [
      problemAt(
        place,
        why === null ? undefined : `${why.valueMm} mm`,
        rule,
        'name another kind under racks.families, or give perRack',
      ),
    ];
  });
}

/** Pieces per rack taken from a class are assumptions too. */
function typicalFills(scenario: Scenario, piecesPerRack?: PiecesPerRack): Input[] {
  return fillsOf(scenario, piecesPerRack).flatMap(({ id, kind, fill: found }): Input[] =>
    found?.from === 'class'
      ? [
          {
            path: `ware.${id}.perRack`,
            at: ['ware', id, 'perRack'],
            value: found.pieces,
            basis: 'assumed',
            range: null,
            source: `typical of its class in a rack of the kind ${kind}`,
            origin: 'default',
          },
        ]
      : [],
  );
}
