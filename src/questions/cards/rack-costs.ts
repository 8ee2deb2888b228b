/** What air in a rack costs, as sentences of its card. */
import { english } from '../../tell/words.js';
import { ML_PER_FLUID_OUNCE } from '../../quantities/unit-sizes.js';
import { familyOf, rackFill, rackKindOf } from '../../scenario/pieces-per-rack.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { spell, type CardDesk } from './card.js';
import { loadTimes } from './facts.js';
import type { Racked } from './racked.js';

const ML_A_US_GALLON = 128 * ML_PER_FLUID_OUNCE;

/** What one piece takes of a load's time, full and half full. */
export function half(desk: CardDesk, wares: readonly Racked[]): string {
  const { scenario, formats } = desk;
  const say = english.cards.rack;
  const { machineMs, racks, waterMl } = loadTimes(scenario);
  const full = Math.max(0, ...wares.map(({ pieces }) => pieces));
  if (full < 2 || machineMs === 0) return '';
  const halved = Math.floor(full / 2);
  const each = (pieces: number): string =>
    english.cards.eachSpell(formats.decimal(machineMs / 1000 / racks / pieces));
  const sentences = say.half(
    spell(machineMs),
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

const water = ({ formats }: CardDesk, ml: number): string =>
  formats.units === 'us'
    ? english.cards.gallons(formats.decimal(ml / ML_A_US_GALLON, 2))
    : english.cards.litres(formats.decimal(ml / 1000));

/**
 * Racks of the rush in whole numbers, and how many full ones would hold the same pieces: each family's by
 * itself, rounded up, as a rack holds one family.
 */
export function rush({ scenario, answer, formats }: CardDesk): string {
  const { racksADay, fill } = answer.loads;
  if (racksADay === 0) return '';
  const families = new Map<string, number>();
  for (const [id, ware] of Object.entries(scenario.ware)) {
    const family = familyOf(id, ware);
    const kind = rackKindOf(scenario.racks, family);
    const pieces = rackFill(ware, kind, scenario.racks, piecesPerRackOf)?.pieces ?? 0;
    const aDay = answer.uses.find((use) => use.ware === id)?.aDay ?? 0;
    // A ware that no rack takes makes it infinite: then nothing is said of full racks.
    families.set(family, (families.get(family) ?? 0) + (aDay === 0 ? 0 : aDay / pieces));
  }
  const washed = Math.round(racksADay);
  const full = [...families.values()].reduce((sum, racks) => sum + Math.ceil(racks - 1e-9), 0);
  return english.cards.rack.fill(
    formats.count(Math.max(1, washed)),
    washed <= 1,
    formats.percent(fill, 0),
    full < washed ? formats.count(full) : null,
  );
}
