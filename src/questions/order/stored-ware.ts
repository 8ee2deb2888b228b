/** The ware of an answer as it has to be stored: how many, how large, how busy, and whether it is to be warm. */
import type { StoredWare } from '../../ordering/machine-top.js';
import { nameOf } from '../../quantities/name.js';
import type { Scenario } from '../../scenario/scenario.js';
import type { Answer } from '../size/answer.js';

/** Share of a day's uses that falls in its busiest hour, from the parties that arrive. */
function busiestShare(answer: Answer): number {
  const { guests, stepMinutes } = answer.evidence!;
  const steps = Math.max(1, Math.round(60 / stepMinutes));
  const all = guests.partiesArriving.reduce((sum, parties) => sum + parties, 0);
  const hours = guests.partiesArriving.map((_, from) =>
    guests.partiesArriving.slice(from, from + steps).reduce((sum, parties) => sum + parties, 0),
  );
  return all === 0 ? 0 : Math.max(...hours) / all;
}

/** The ware of an answer whose days were watched, as it has to be stored. */
export function storedWare(scenario: Scenario, answer: Answer): StoredWare[] {
  const hot = hotVessels(scenario);
  const share = busiestShare(answer);
  return answer.stock.map(({ ware: id, pieces }) => {
    const ware = scenario.ware[id]!;
    const widest = Math.max(ware.rim ?? 0, ware.foot ?? 0);
    return {
      id,
      name: nameOf(id, ware),
      par: pieces,
      diameterMm: widest === 0 ? null : widest,
      handleMm: ware.handle ?? 0,
      massG: ware.mass ?? null,
      onMachine: ware.shape === 'cup' || ware.shape === 'glass',
      warmth: hot(id) ? (ware.mass ?? 1) / (ware.brim ?? 1) : 0,
      peakUsesPerHour: answer.uses.find((one) => one.ware === id)!.aDay * share,
    };
  });
}

/** Cups are warmed; a glass only where a drink in it has a recipe with a shot, under suit.drinks. */
function hotVessels({ ware, menu, suit }: Scenario): (id: string) => boolean {
  const inGlass = new Set(
    Object.keys(suit?.drinks ?? {}).flatMap((drink) => menu[drink]?.setting ?? []),
  );
  return (id) => ware[id]!.shape === 'cup' || (ware[id]!.shape === 'glass' && inGlass.has(id));
}
