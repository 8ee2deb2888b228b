/** The racks, reported once: what a rack holds, what that rests on, the lift, washing in the rush, wider cups. */
import { wareClass } from '../../catalogue/catalogue.js';
import { LEAST_GAP_MM, USUAL_ON_EDGE } from '../../racking/pegs.js';
import type { Scenario } from '../../scenario/scenario.js';
import { fold, heading, list, paragraphs, type Block } from '../../tell/block.js';
import { cautionsFor } from '../../tell/cautions.js';
import type { ReportContext } from '../../tell/context.js';
import { formatsFor, type Formats } from '../../tell/format.js';
import { shortName } from '../../tell/section-parts.js';
import { english } from '../../tell/words.js';
import { boundsTable, changeText, linesTable, rackName } from './line-text.js';
import { rackDrawings } from './pictures.js';
import { countRanges } from './ranges.js';
import { ASSUMED_LIFT, liftingWork } from './study.js';
import { type RackLine, type RacksAnswer } from './answer.js';
import { shapesBlocks, washingBlocks } from './tell-washing.js';
import { rackWords as say } from './words.js';

/** Cautions that go with loading, lifting and unloading racks. */
const CAUTIONS = ['lifting', 'brokenGlass', 'scalds', 'sanitising', 'chemicals'];
/** So many counts that hang on a rim that is not measured are named among the findings, the widest first. */
const RANGES = 2;

/** @param only this item alone, by its id: without washing and wider cups */
export function racksBlocks(
  whole: RacksAnswer,
  scenario: Scenario,
  context: ReportContext,
  only?: string,
): Block[] {
  const asked = ({ ware }: { readonly ware: string }): boolean =>
    only === undefined || ware === only;
  const answer = { ...whole, lines: whole.lines.filter(asked), given: whole.given.filter(asked) };
  const formats = formatsFor(context);
  const used = answer.lines.filter((line) => line.used);
  const drawings = rackDrawings(answer, scenario, context);
  return [
    heading(say.head),
    paragraphs([leadText(used, formats)], 'lead'),
    list([
      ...findings(answer, scenario, context, formats),
      ...(only === undefined ? daily(answer, formats) : []),
      ...heaviest(answer, formats),
    ]),
    list(warnings(answer.lines, formats), say.warnings),
    linesTable(say.usedCaption, used, formats),
    ...(used.length === 0
      ? []
      : [
          paragraphs([say.searched, liftText(whole, formats)], 'small'),
          { ...paragraphs([say.liftOptions], 'small'), only: 'text' as const },
        ]),
    list(origins(answer, scenario, formats), say.counts),
    { kind: 'picture', pictures: drawings, together: true },
    fold(say.otherRacks, [
      linesTable(
        say.otherCaption,
        answer.lines.filter((line) => !line.used),
        formats,
      ),
    ]),
    fold(say.mostFold, [boundsTable(answer.lines, formats), paragraphs([say.mostNote], 'small')]),
    ...(only === undefined
      ? [...washingBlocks(answer, context), ...shapesBlocks(answer, context)]
      : []),
    list(cautions(context), say.cautions),
  ];
}

/** The heaviest rack of those that this house loads, and what the lift asks for. */
function heaviest({ lines, liftCaution }: RacksAnswer, formats: Formats): string[] {
  const most = lines
    .filter(({ used, loadedKg }) => used && loadedKg !== null)
    .reduce<RackLine | null>(
      (top, line) => (top === null || line.loadedKg! > top.loadedKg! ? line : top),
      null,
    );
  return liftCaution === null || most === null
    ? []
    : [say.heaviest(shortName(most.name), formats.mass(most.loadedKg! * 1000), liftCaution)];
}

const leadText = (used: readonly RackLine[], formats: Formats): string =>
  used.length === 0
    ? say.noShape
    : say.lead(
        used
          .map(({ name, pieces }) => say.count(shortName(name), formats.count(pieces)))
          .join(', '),
      );

/** Whose count is nearest to another one, and whose count is not sure. */
function findings(
  { lines }: RacksAnswer,
  scenario: Scenario,
  context: ReportContext,
  formats: Formats,
): string[] {
  const nearest = lines
    .flatMap((line) => (line.used && line.cliff !== null ? [{ line, cliff: line.cliff }] : []))
    .toSorted((a, b) => Math.abs(a.cliff.changeMm) - Math.abs(b.cliff.changeMm))[0];
  return [
    ...(nearest === undefined
      ? []
      : [
          say.measure(
            shortName(nearest.line.name),
            changeText(nearest.cliff, formats),
            formats.count(nearest.cliff.piecesThen),
            formats.count(nearest.line.pieces),
          ),
        ]),
    ...lines
      .filter((line) => line.used && line.tryOne)
      .map(({ name, rack, pieces }) => {
        const gap = scenario.racks?.measures?.[rack]?.waterGap;
        return say.tryOnEdge(
          shortName(name),
          formats.count(pieces),
          say.usual(formats.count(USUAL_ON_EDGE.fewest), formats.count(USUAL_ON_EDGE.most)),
          formats.length(gap ?? LEAST_GAP_MM),
          gap !== undefined,
        );
      }),
    ...countRanges(lines, scenario, context.inputs)
      .toSorted((a, b) => b.most / Math.max(1, b.fewest) - a.most / Math.max(1, a.fewest))
      .slice(0, RANGES)
      .map(({ name, fewest, most, fromMm, toMm }) =>
        say.tryRack(
          shortName(name),
          formats.count(fewest),
          formats.count(most),
          formats.length(fromMm),
          formats.length(toMm),
        ),
      ),
  ];
}

/** Racks of a day: how full they are, how few they could be, and whether they wait. */
function daily(
  { washing: { loads, queue }, plan, lines }: RacksAnswer,
  formats: Formats,
): string[] {
  const better = lines
    .filter((line) => line.planned && !line.used)
    .flatMap((line) => {
      const now = lines.find((one) => one.used && one.ware === line.ware);
      return now === undefined
        ? []
        : say.better(
            shortName(line.name),
            rackName(line.rack, line.rackName),
            formats.count(line.pieces),
            formats.count(now.pieces),
          );
    });
  return [
    [
      say.fill(formats.decimal(loads.racksADay), formats.percent(loads.fill, 0)),
      queue === null
        ? say.noQueue
        : say.queue(formats.clock(queue.fromMinute), formats.clock(queue.toMinute)),
    ].join(' '),
    [
      say.plan(
        plan.usedRacksADay === null ? null : formats.decimal(plan.usedRacksADay),
        formats.decimal(plan.racksADay),
      ),
      ...better,
    ].join(' '),
  ];
}

function warnings(lines: readonly RackLine[], formats: Formats): string[] {
  const marked = lines.filter((line) => line.used || line.planned);
  const named = (line: RackLine): readonly [string, string] => [
    shortName(line.name),
    rackName(line.rack, line.rackName),
  ];
  return [
    ...lines.flatMap((line) =>
      line.used ? line.problems.map((problem) => say.problem(...named(line), problem)) : [],
    ),
    ...marked
      .filter(({ extenders }) => extenders > 0)
      .map((line) => say.extenders(...named(line), line.extenders, formats.count(line.extenders))),
    ...(marked.some((line) => line.glass && line.rack === 'open') ? [say.glassApart] : []),
  ];
}

/** Counts that are not worked out from the shape, and counts that differ from what is worked out. */
function origins({ lines, given }: RacksAnswer, scenario: Scenario, formats: Formats): string[] {
  const { count } = formats;
  const fixed = given.map(({ ware, name, pieces, rack, from }) => {
    const line = lines.find((one) => one.used && one.ware === ware);
    const place = rackName(rack, rack);
    if (from === 'class') return say.typical(shortName(name), count(pieces), place);
    return line === undefined || line.pieces === pieces
      ? say.given(shortName(name), count(pieces), place)
      : say.givenBeside(shortName(name), count(pieces), place, count(line.pieces));
  });
  const apart = lines.flatMap((line) => {
    const { like } = scenario.ware[line.ware]!;
    const typical = like === undefined ? undefined : wareClass(like)?.perRack[line.rack];
    return !line.used ||
      typical === undefined ||
      typical === line.pieces ||
      given.some(({ ware }) => ware === line.ware)
      ? []
      : say.classBeside(
          shortName(line.name),
          count(typical),
          rackName(line.rack, line.rackName),
          count(line.pieces),
        );
  });
  return [...fixed, ...apart];
}

function liftText({ lift, washing }: RacksAnswer, formats: Formats): string {
  const { perMinute, hours } = liftingWork(washing.loads.racksADay, washing.openHours);
  const assumed = (['reachCm', 'fromCm', 'toCm'] as const).every(
    (part) => lift[part] === ASSUMED_LIFT[part],
  );
  return say.liftNote(
    assumed,
    formats.height(lift.fromCm),
    formats.height(lift.toCm),
    formats.height(lift.reachCm),
    formats.decimal(perMinute * 60),
    hours,
  );
}

function cautions(context: ReportContext): string[] {
  return cautionsFor(context)
    .filter(({ id }) => CAUTIONS.includes(id))
    .toSorted((a, b) => CAUTIONS.indexOf(a.id) - CAUTIONS.indexOf(b.id))
    .map(
      ({ title, text, defersTo }) => `${title}: ${text} (${english.cautions.defers} ${defersTo}.)`,
    );
}
