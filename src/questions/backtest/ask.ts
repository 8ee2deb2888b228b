/** The backtest, asked and answered: scenario, export and map → how the stock would have done. */
import { unknownDrinks } from '../../till/apply-till.js';
import { readTill } from '../../till/read-till.js';
import type { TillFlaw } from '../../till/flaw.js';
import type { PositionOf } from '../../scenario/read-scenario.js';
import { renderSvg, standaloneSvg } from '../../tell/render-svg.js';
import type { Ask } from '../question.js';
import type { Result } from '../result.js';
import { datedMap } from '../till/holidays.js';
import { readTillMap, tillProblem } from '../till/read-map.js';
import type { backtest } from './head.js';
import { backtestStudy } from './study.js';
import { recordedDaysChart } from './charts/recorded-days.js';
import { backtestBlocks } from './tell.js';

const [DAYS, DRAWS] = [1000, 100];

export const ask: Ask<typeof backtest> = async (asking, given) => {
  const { opened, fileName, text, runner, context } = asking;
  const { till, map: mapFile } = given;
  if (till === undefined || mapFile === undefined || text === undefined)
    throw new Error('an export, its map and the text of the scenario are required');
  const map = readTillMap(mapFile.bytes, mapFile.name);
  if (!map.ok) return map;
  const stop = (flaws: readonly TillFlaw[]): Result<never> => {
    const files: Record<TillFlaw['about'], readonly [string, PositionOf | null]> = {
      map: [mapFile.name, map.positionOf],
      base: [fileName, opened.positionOf],
      export: [till.name, null],
    };
    return { ok: false, problems: flaws.map((flaw) => tillProblem(flaw, ...files[flaw.about])) };
  };
  const unknown = unknownDrinks(map.map.groups, text);
  if (unknown.length > 0) return stop(unknown);
  const dated = datedMap(map.map, mapFile.name, map.positionOf, given.holidays);
  if (!dated.ok) return dated;
  const tally = await readTill(bytesOf(till.bytes), map.map);
  if (!tally.ok) return stop(tally.flaws);
  const found = await backtestStudy({
    text,
    map: dated.value,
    tally: tally.value,
    file: till.name.split(/[/\\]/).at(-1)!,
    runner,
    level: given.level ?? opened.scenario.level,
    seed: given.seed ?? opened.scenario.seed,
    days: given.days ?? DAYS,
    draws: given.draws ?? DRAWS,
  });
  if (!found.ok) return stop(found.flaws);
  const picture = recordedDaysChart(found.value, context);
  return {
    ok: true,
    value: {
      json: found.value,
      blocks: backtestBlocks(found.value, context),
      jsonFile: 'backtest.json',
      files: async () => [
        {
          ending: `${picture.id}.svg`,
          content: standaloneSvg(await renderSvg(picture.spec)),
        },
      ],
    },
  };
};

async function* bytesOf(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
