/** The racks from a file: table and washing printed, drawings written where asked. */
import { basename, extname, join } from 'node:path';
import { length } from '../quantities/units.js';
import { rackLayout } from '../racking/layout.js';
import { twoShapesChart } from '../questions/racks/two-shapes.js';
import { cleanText } from '../tell/clean-text.js';
import { contextOf } from '../tell/context-of.js';
import { drawRack } from '../tell/drawings/rack-drawing.js';
import { formatsFor } from '../tell/format.js';
import { racksText } from '../questions/racks/text.js';
import { renderSvg, standaloneSvg } from '../tell/render-svg.js';
import { english } from '../tell/words.js';
import { piecesPerRackOf, rackOf, vesselOf } from '../scenario/rack-geometry.js';
import {
  ASSUMED_LIFT,
  racksStudy,
  type RacksAnswer,
  type StatedLift,
} from '../questions/racks/study.js';
import type { Scenario } from '../scenario/scenario.js';
import { tryOutput, writeAll } from './files.js';
import { MistakeError } from './mistakes.js';
import { openScenario } from './open-scenario.js';
import { version } from './version.js';
import { printAnswer } from './print.js';
import { withRunner } from './with-runner.js';

export interface RacksArguments {
  readonly file: string;
  readonly ware?: string;
  readonly json: boolean;
  readonly seed?: string;
  readonly out?: string;
  readonly liftFrom?: string;
  readonly liftTo?: string;
  readonly reach?: string;
}

/** Width of a drawing on a page, CSS pixels. */
const DRAWING_PX = 520;

export async function runRacks(args: RacksArguments): Promise<void> {
  const opened = await openScenario(args.file);
  if (args.out !== undefined) await tryOutput(args.out, 'folder');
  const { scenario } = opened;
  if (args.ware !== undefined && scenario.ware[args.ware] === undefined)
    throw new MistakeError(
      `--ware: "${args.ware}" is no ware of this scenario; it has ${Object.keys(scenario.ware).join(', ')}`,
    );
  const lift = liftOf(args);
  const answer = await withRunner('running days', undefined, (runner) =>
    racksStudy(scenario, runner, {
      lift,
      wider: args.ware === undefined,
      ...(args.seed === undefined ? {} : { seed: args.seed }),
    }),
  );
  const context = contextOf(scenario, opened.inputs, version, piecesPerRackOf);
  const files =
    args.out === undefined
      ? []
      : await drawings(
          answer,
          scenario,
          join(args.out, basename(args.file, extname(args.file))),
          args.ware,
          formatsFor(context),
          context.locale,
        );
  await writeAll(files);
  printAnswer(
    !args.json ? null : args.ware === undefined ? answer : ofWare(answer, args.ware),
    () => racksText(answer, context, args.ware),
    files,
  );
}

/** What is told of one ware alone: its lines, and the lift. */
const ofWare = (
  answer: RacksAnswer,
  id: string,
): Omit<RacksAnswer, 'washing' | 'twoShapes' | 'plan'> => {
  const { washing: _washing, twoShapes: _twoShapes, plan: _plan, ...rest } = answer;
  return {
    ...rest,
    lines: answer.lines.filter(({ ware }) => ware === id),
    given: answer.given.filter(({ ware }) => ware === id),
  };
};

function liftOf(args: RacksArguments): StatedLift {
  const problems: string[] = [];
  const cm = (option: string, text: string | undefined, assumed: number): number => {
    if (text === undefined) return assumed;
    const parsed = length.safeParse(text);
    if (parsed.success) return parsed.data / 10;
    problems.push(`--${option}: "${text}" ${parsed.error.issues[0]!.message}`);
    return assumed;
  };
  const lift = {
    reachCm: cm('reach', args.reach, ASSUMED_LIFT.reachCm),
    fromCm: cm('lift-from', args.liftFrom, ASSUMED_LIFT.fromCm),
    toCm: cm('lift-to', args.liftTo, ASSUMED_LIFT.toCm),
  };
  if (problems.length > 0) throw new MistakeError(problems.join('\n'));
  return lift;
}

async function drawings(
  answer: RacksAnswer,
  scenario: Scenario,
  stem: string,
  only: string | undefined,
  formats: ReturnType<typeof formatsFor>,
  locale: string,
): Promise<{ path: string; content: string }[]> {
  const used = answer.lines.filter(
    (line) => line.used && line.pieces > 0 && (only === undefined || line.ware === only),
  );
  const racks = used.map((line, index) => {
    const [vessel, rack] = [
      vesselOf(scenario.ware[line.ware]!)!,
      rackOf(line.rack, scenario.racks)!,
    ];
    return {
      path: `${stem}.rack-${line.ware}.svg`,
      content: drawRack(rackLayout(vessel, rack, scenario.racks?.loading ?? 'best'), vessel, rack, {
        title: english.racks.drawingTitle(cleanText(line.name), line.pieces, line.rackName),
        id: `rack-${index + 1}`,
        widthPx: DRAWING_PX,
      }),
    };
  });
  if (answer.twoShapes === null || only !== undefined) return racks;
  return [
    ...racks,
    {
      path: `${stem}.two-shapes.svg`,
      content: standaloneSvg(
        await renderSvg(twoShapesChart(answer.twoShapes, { locale, formats })),
      ),
    },
  ];
}
