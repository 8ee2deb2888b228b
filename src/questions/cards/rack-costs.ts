/** What air in a rack costs, as sentences of its card. */
import { ML_PER_FLUID_OUNCE } from '../../quantities/unit-sizes.js';
import { familyOf, rackFill, rackKindOf } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { spell, type CardDesk } from './card.js';
import { loadTimes } from './facts.js';
import type { Racked } from './racked.js';

const ML_A_US_GALLON = 128 * ML_PER_FLUID_OUNCE;

/** What one piece takes of a load's time, full and half full. */
export function half(desk: CardDesk, wares: readonly Racked[]): string {
  const { scenario, words, formats } = desk;
  const say = words.cards.rack;
  const { machineMs, racks, waterMl } = loadTimes(scenario);
  const full = Math.max(0, ...wares.map(({ pieces }) => pieces));
  if (full < 2 || machineMs === 0) return '';
  const halved = Math.floor(full / 2);
  const each = (pieces: number): string =>
    words.cards.eachSpell(formats.decimal(machineMs / 1000 / racks / pieces));
  const sentences = say.half(
    spell(machineMs, desk),
    formats.count(full),
    each(full),
    formats.count(halved),
    each(halved),
  );
  return [
    racks > 1 ? say.machineTwo(formats.count(racks)) : '',
    sentences,
    waterMl === null ? '' : say.water(water(desk, waterMl)),
  ]
    .filter((text) => text !== '')
    .join(' ');
}

const water = ({ formats, words }: CardDesk, ml: number): string =>
  formats.units === 'us'
    ? words.cards.gallons(formats.decimal(ml / ML_A_US_GALLON, 2))
    : words.cards.litres(formats.decimal(ml / 1000));

/** Racks of the rush as the answer has them, and how many full ones would hold the same. */
export function rush({ scenario, answer, words, formats }: CardDesk): string {
  const perRack = Object.entries(scenario.ware).map(([id, ware]) => ({
    id,
    pieces:
      rackFill(
        ware,
        rackKindOf(scenario.racks, familyOf(id, ware)),
        scenario.racks,
        piecesPerRackOf,
      )?.pieces ?? 0,
  }));
  const full = perRack.some(({ pieces }) => pieces === 0)
    ? null
    : answer.uses.reduce(
        (sum, { ware, aDay }) =>
          sum + aDay / (perRack.find(({ id }) => id === ware)?.pieces ?? Infinity),
        0,
      );
  return answer.loads.racksADay === 0
    ? ''
    : words.cards.rack.fill(
        formats.decimal(answer.loads.racksADay),
        formats.percent(answer.loads.fill, 0),
        full === null ? null : formats.decimal(full),
      );
}
