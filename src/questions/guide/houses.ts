/** The sizes of house that a guide is asked for, from what was given or from the file. */
import { meanStaysIn } from '../../scenario/shares-by-time.js';
import type { Scenario } from '../../scenario/scenario.js';
import { formatsFor } from '../../tell/format.js';
import { SettingError } from '../settings.js';
import { mostStayingIn, type HouseSize } from './grow.js';

/** Columns that can be read on one page. */
const MOST_HOUSES = 8;

/** Every size with every share. @throws SettingError for too many, or one that is there twice */
export function housesOf(
  { seats: { count } }: Scenario,
  seats?: readonly number[],
  takeaway?: readonly number[],
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

/**
 * Where more guests stay in at some hours than at others, the share at the fullest hour bounds what can be asked.
 * @throws SettingError with the least share that can be
 */
export function checkTakeaway(scenario: Scenario, takeaway: readonly number[]): void {
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
