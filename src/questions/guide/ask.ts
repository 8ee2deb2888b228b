/** The planning guide, asked and answered: scenario and sizes → one page to hand out. */
import { formatsFor } from '../../tell/format.js';
import { meanStaysIn } from '../../scenario/shares-by-time.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Ask } from '../question.js';
import { SettingError } from '../settings.js';
import { guideFiles } from './files.js';
import { mostStayingIn, type HouseSize } from './grow.js';
import type { guide } from './head.js';
import { guideStudy } from './study.js';
import { guideBlocks } from './tell.js';

/** Columns that can be read on one page. */
const MOST_HOUSES = 8;

export const ask: Ask<typeof guide> = async (asking, given) => {
  const { opened, fileName, runner, context } = asking;
  const houses = housesOf(opened.scenario, given.seats, given.takeaway);
  checkTakeaway(opened.scenario, given.takeaway ?? []);
  const { level, seed, days } = given;
  const study = await guideStudy(opened, fileName, runner, { houses, level, seed, days });
  if (!study.ok) return study;
  return {
    ok: true,
    value: {
      json: study.value,
      blocks: guideBlocks(study.value, context),
      files: (_draw, faces) => guideFiles(study.value, context, faces),
    },
  };
};

/** Every size with every share. @throws SettingError for too many, or one that is there twice */
export function housesOf(
  { seats: { count } }: Scenario,
  seats: readonly number[] | undefined,
  takeaway: readonly number[] | undefined,
): HouseSize[] {
  const own = count ?? 1;
  const sizes = seats ?? [
    ...new Set([0.5, 1, 1.5, 2].map((times) => Math.max(1, Math.round(own * times)))),
  ];
  const shares: readonly (number | null)[] = takeaway ?? [null];
  refuseTwice('seats', sizes, String);
  refuseTwice('takeaway', takeaway ?? [], (share) => String(Math.round(share * 1e6) / 1e4));
  if (sizes.length * shares.length > MOST_HOUSES)
    throw new SettingError(
      `${sizes.length} ${sizes.length === 1 ? 'size' : 'sizes'}${takeaway === undefined ? '' : ` with ${shares.length} ${shares.length === 1 ? 'share' : 'shares'} of takeaway`} make ${sizes.length * shares.length} houses, more than the ${MOST_HOUSES} that one page holds; leave some out, or make two guides`,
      'seats',
    );
  return shares.flatMap((share) => sizes.map((size) => ({ seats: size, takeaway: share })));
}

function refuseTwice(
  setting: string,
  values: readonly number[],
  text: (value: number) => string,
): void {
  const twice = values.find((value, at) => values.indexOf(value) < at);
  if (twice !== undefined)
    throw new SettingError(`"${text(twice)}" is given twice; give it once`, setting);
}

/** Where more guests stay in at some hours than at others, the share at the fullest hour bounds what can be asked. */
function checkTakeaway(scenario: Scenario, takeaway: readonly number[]): void {
  const stays = meanStaysIn(scenario);
  const { percent } = formatsFor({ locale: 'en', currency: 'EUR', openingMinute: null });
  const wrong = takeaway.filter(
    (share) => stays > 0 && mostStayingIn(scenario, (1 - share) / stays) > 1 + 1e-9,
  );
  if (wrong.length > 0)
    throw new SettingError(
      wrong
        .map(
          (share) =>
            `"${percent(share, 0)}" would need more than all guests to stay in at the hour when most do; write ${percent(Math.ceil(100 * (1 - stays / mostStayingIn(scenario, 1))) / 100, 0)} or more, or one share under guests.staysIn`,
        )
        .join('\n'),
      'takeaway',
    );
}
