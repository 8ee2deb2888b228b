/**
 * A recorded day to run: its parties, drinks and items are those of the till; what a till cannot know is drawn: when in
 * its slot a party came, which party had which drinks, who stayed in, how long, second drinks, time to make.
 */
import type { ListedDay, ListedParty } from '../../cafe/listed-day.js';
import type { CafeModel } from '../../cafe/model.js';
import { Duration } from '../../engine/durations.js';
import type { Stream } from '../../engine/streams.js';
import type { DrinkGroup } from '../../till/items.js';
import type { TillDay } from '../../till/tally.js';

const MINUTE = 60_000;

export interface Recorded {
  readonly day: TillDay;
  readonly slotMinutes: number;
  readonly groups: readonly DrinkGroup[];
}

export function recordedDay(
  { day, slotMinutes, groups }: Recorded,
  model: CafeModel,
  stream: Stream,
): ListedDay {
  const making = model.menu.map((drink) => new Duration(drink.making));
  const dwell = model.guests.dwell.map((law) => new Duration(law));
  const index = new Map(model.menu.map(({ id }, at) => [id, at]));
  const kinds = shuffled(
    groups.flatMap((group, at) =>
      Array.from({ length: Math.max(0, day.byGroup[at]!) }, () =>
        index.get(oneOf(group.drinks, model, index, stream))!,
      ),
    ),
    stream,
  );
  let next = 0;
  const drink = (kind: number) => ({
    drink: model.menu[kind]!.id,
    makeMinutes: making[kind]!.draw(stream) / MINUTE,
  });
  const parties: ListedParty[] = [];
  day.parties.forEach((count, slot) => {
    for (const size of sizesOf(count, day.drinks[slot]!, stream)) {
      const minute = (slot + stream.uniform()) * slotMinutes;
      const share = sharesAt(model, minute * MINUTE);
      parties.push({
        minute,
        size,
        staysIn: stream.uniform() < share.staysIn,
        dwellMinutes: dwell[Math.min(size, dwell.length) - 1]!.draw(stream) / MINUTE,
        drinks: Array.from({ length: size }, () =>
          drink(kinds[next++] ?? weighted(share.menu, stream)),
        ),
        seconds: Array.from({ length: size }, () => stream.uniform())
          .filter((luck) => luck < model.guests.secondDrink)
          .map(() => ({ ...drink(weighted(share.menu, stream)), shareOfDwell: stream.uniform() })),
      });
    }
  });
  return { parties };
}

/** So many parties with so many drinks among them: one each, the rest handed out at random. */
function sizesOf(parties: number, drinks: number, stream: Stream): number[] {
  const sizes = Array.from({ length: parties }, () => 1);
  for (let more = drinks - parties; more > 0 && parties > 0; more -= 1) {
    const at = Math.floor(stream.uniform() * parties);
    sizes[at] = sizes[at]! + 1;
  }
  return sizes;
}

function sharesAt({ shareSteps, guests, menu }: CafeModel, ms: number) {
  return (
    shareSteps?.find(({ untilMs }) => ms < untilMs) ??
    shareSteps?.at(-1) ?? { staysIn: guests.staysIn, menu: menu.map(({ share }) => share) }
  );
}

function weighted(weights: readonly number[], stream: Stream): number {
  let left = stream.uniform() * weights.reduce((sum, one) => sum + one, 0);
  for (const [at, weight] of weights.entries()) if ((left -= weight) < 0) return at;
  return weights.length - 1;
}

/** A drink of a group that the till does not tell apart, by the shares of the menu. */
function oneOf(
  drinks: readonly string[],
  { menu }: CafeModel,
  index: ReadonlyMap<string, number>,
  stream: Stream,
): string {
  if (drinks.length === 1) return drinks[0]!;
  const shares = drinks.map((id) => menu[index.get(id)!]!.share);
  return drinks[
    weighted(shares.some((share) => share > 0) ? shares : drinks.map(() => 1), stream)
  ]!;
}

function shuffled<T>(items: readonly T[], stream: Stream): T[] {
  const mixed = [...items];
  for (let last = mixed.length - 1; last > 0; last -= 1) {
    const at = Math.floor(stream.uniform() * (last + 1));
    [mixed[last], mixed[at]] = [mixed[at]!, mixed[last]!];
  }
  return mixed;
}
