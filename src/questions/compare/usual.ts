/**
 * The questions that owners usually ask, as edits of any house: another machine, racks, habits, people, vessels, and what
 * other guests would mean. Each applies where the house has what it changes.
 */
import { machineClassIds } from '../../catalogue/catalogue.js';
import type { House } from '../../scenario/edited.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import { rawValueAt, scaled, tidy, withoutRaw, withRawValue } from '../../scenario/raw-paths.js';
import type { Scenario } from '../../scenario/scenario.js';
import { valueSize } from '../../scenario/value-size.js';
import { longer, timeOf, type TimePath } from './habits.js';

export interface Usual {
  readonly id: string;
  readonly name: string;
  /** Something to plan for, such as other guests or a machine that fails, or of which the price is not known: never recommended. */
  readonly planFor: boolean;
  /** The changed tree; null where it does not apply. */
  edit(base: House): unknown;
}

const MINUTE = 60_000;
const WAIT: TimePath = ['washing', 'partLoadWait'];
const ROUNDS: TimePath = ['clearing', 'every'];

const listedMachines = ({ washing }: Scenario) =>
  Array.isArray(washing.machines) ? washing.machines : [];
export const machineCount = (scenario: Scenario): number =>
  listedMachines(scenario).reduce((sum, { count }) => sum + (count ?? 1), 0);

/** One machine more or fewer, of the first kind. */
function withMachines(base: House, more: 1 | -1): unknown {
  const { raw, scenario } = base;
  const [first] = listedMachines(scenario);
  if (first === undefined || machineCount(scenario) + more < 1) return null;
  const count = (first.count ?? 1) + more;
  return count === 0
    ? withoutRaw(raw, ['washing', 'machines', 0])
    : withRawValue(raw, ['washing', 'machines', 0, 'count'], count);
}

/** One machine of the first kind stands still all day. */
export function withOneOut({ raw, scenario }: House): unknown {
  const [first] = listedMachines(scenario);
  if (first === undefined) return null;
  const { hours } = scenario;
  const path = ['washing', 'machines', 0];
  const own = rawValueAt(raw, path) as Record<string, unknown>;
  const out = { ...own, count: 1, down: [{ from: '0 min', for: `${hoursMinutes(hours)} min` }] };
  const rest = (first.count ?? 1) > 1 ? [{ ...own, count: first.count! - 1 }] : [];
  const others = (rawValueAt(raw, ['washing', 'machines']) as unknown[]).slice(1);
  return withRawValue(raw, ['washing', 'machines'], [out, ...rest, ...others]);
}

const hoursMinutes = (hours: Scenario['hours']): number =>
  'for' in hours ? hours.for / MINUTE : (hours.to - hours.from) / MINUTE;

function fasterClass({ raw, scenario }: House): unknown {
  const [first] = listedMachines(scenario);
  const ids = machineClassIds();
  const next = first?.class === undefined ? undefined : ids[ids.indexOf(first.class) + 1];
  return next === undefined
    ? null
    : withRawValue(raw, ['washing', 'machines', 0], {
        class: next,
        ...(first!.count === undefined ? {} : { count: first!.count }),
      });
}

/** All ware that is washed in one kind of rack in one family, so that it shares racks. */
function mixedRacks({ raw, scenario }: House): unknown {
  const kindOf = (family: string): string => scenario.racks?.families?.[family] ?? 'open';
  const open = Object.entries(scenario.ware).filter(
    ([id, { family = id }]) => kindOf(family) === 'open',
  );
  const families = new Set(open.map(([id, { family = id }]) => family));
  if (families.size < 2) return null;
  const [first] = families;
  return open.reduce<unknown>(
    (tree, [id]) => withRawValue(tree, ['ware', id, 'family'], first),
    raw,
  );
}

function habit(path: TimePath, times: number): (base: House) => unknown {
  return (base) => {
    const own = timeOf(base.scenario, path);
    return own === null || own === 0
      ? null
      : withRawValue(base.raw, path, longer(rawValueAt(base.raw, path), own, times));
  };
}

function fullerRacks({ raw, scenario }: House): unknown {
  return timeOf(scenario, WAIT) === null
    ? null
    : withRawValue(raw, ['washing', 'partLoadFrom'], '75 %');
}

/** One person more or fewer. */
function people(path: readonly [string, string], more: 1 | -1): (base: House) => unknown {
  return ({ raw, scenario }) => {
    const slice = scenario[path[0] as 'counter'] as unknown as Record<string, unknown> | 'atOnce';
    const own = slice === 'atOnce' ? undefined : slice[path[1]];
    return typeof own === 'number' && own + more >= 1
      ? withRawValue(raw, [...path], own + more)
      : null;
  };
}

function foodMenu({ raw, scenario }: House): unknown {
  return scenario.washing.otherLoads === undefined
    ? withRawValue(raw, ['washing', 'otherLoads'], { racks: '8 / h' })
    : null;
}

function quickerDrying({ raw, scenario }: House): unknown {
  return Object.entries(scenario.ware).reduce<unknown>((tree, [id, { drying }]) => {
    const mean = valueSize(drying) ?? 0;
    const at = ['ware', id, 'drying'];
    return mean === 0 ? tree : withRawValue(tree, at, longer(rawValueAt(tree, at), mean, 0.5));
  }, raw);
}

const MOST_NARROWER_MM = 12;

/** The most used cup, as much narrower as it takes for its rack to hold more. */
function narrowerCup({ raw, scenario }: House): unknown {
  for (const [id, ware] of Object.entries(scenario.ware)) {
    if (ware.shape !== 'cup' || ware.rim === undefined) continue;
    const kind = scenario.racks?.families?.[ware.family ?? id] ?? 'open';
    const now = piecesPerRackOf(ware, kind, scenario.racks);
    if (now === null) continue;
    for (let less = 1; less <= MOST_NARROWER_MM; less += 1) {
      const rim = ware.rim - less;
      const then = piecesPerRackOf({ ...ware, rim }, kind, scenario.racks);
      if (then !== null && then > now)
        return withRawValue(
          withRawValue(raw, ['ware', id, 'rim'], `${tidy(rim)} mm`),
          ['ware', id, 'perRack'],
          then,
        );
    }
  }
  return null;
}

/** The widest ware of a shape takes the place of all others of it. */
function oneFor(shape: 'cup' | 'saucer'): (base: House) => unknown {
  return ({ raw, scenario }) => {
    const alike = Object.entries(scenario.ware)
      .filter(([, ware]) => ware.shape === shape)
      .toSorted(([, a], [, b]) => (b.rim ?? 0) - (a.rim ?? 0));
    const [keep, ...others] = alike.map(([id]) => id);
    if (keep === undefined || others.length === 0) return null;
    const swapped = (setting: unknown): unknown =>
      Array.isArray(setting)
        ? setting.map((piece: unknown) =>
            typeof piece === 'string' && others.includes(piece) ? keep : piece,
          )
        : setting;
    let tree = raw;
    for (const id of Object.keys(scenario.menu)) {
      const setting = rawValueAt(raw, ['menu', id, 'setting']);
      tree = withRawValue(tree, ['menu', id, 'setting'], swapped(setting));
      const fallBacks = rawValueAt(raw, ['menu', id, 'fallBacks']);
      if (Array.isArray(fallBacks)) {
        const own = JSON.stringify(swapped(setting));
        const left = fallBacks.map(swapped).filter((one) => JSON.stringify(one) !== own);
        tree = withRawValue(tree, ['menu', id, 'fallBacks'], left);
      }
    }
    return others.reduce<unknown>((without, id) => withoutRaw(without, ['ware', id]), tree);
  };
}

const moreGuests = ({ raw }: House): unknown =>
  withRawValue(raw, ['arrivals'], scaled(rawValueAt(raw, ['arrivals']), 1.2));

function longerStay({ raw, scenario }: House): unknown {
  const longerBy = (law: (typeof scenario.guests.dwell)[number]): unknown => {
    const more = (ms: number): string => `${tidy(ms / MINUTE + 10)} min`;
    if (law.law === 'constant') return more(law.ms);
    if (law.law === 'exponential') return { exponential: more(law.meanMs) };
    if (law.law === 'lognormal' || law.law === 'gamma')
      return { [law.law]: { mean: more(law.meanMs), sd: `${tidy(law.sdMs / MINUTE)} min` } };
    return null;
  };
  const laws = scenario.guests.dwell.map(longerBy);
  return laws.includes(null)
    ? null
    : withRawValue(raw, ['guests', 'dwell'], {
        bySize: Object.fromEntries(laws.map((law, at) => [String(at + 1), law])),
      });
}

/** At every time of the day, where the share changes with it. */
function staysIn(points: number): (base: House) => unknown {
  return ({ raw, scenario }) => {
    const { staysIn: own } = scenario.guests;
    const places: readonly (readonly [readonly (string | number)[], number])[] =
      typeof own === 'number'
        ? [[['guests', 'staysIn'], own]]
        : own.map((step, at) => [['guests', 'staysIn', at, 'staysIn'], step.staysIn]);
    const moved = places.map(([at, share]) => [at, share + points / 100] as const);
    return moved.every(([, share]) => share > 0 && share <= 1)
      ? moved.reduce<unknown>(
          (tree, [at, share]) => withRawValue(tree, at, `${tidy(100 * share)} %`),
          raw,
        )
      : null;
  };
}

const choice = (id: string, name: string, edit: Usual['edit']): Usual => ({
  id,
  name,
  planFor: false,
  edit,
});
const plan = (id: string, name: string, edit: Usual['edit']): Usual => ({
  id,
  name,
  planFor: true,
  edit,
});

export const usualQuestions: readonly Usual[] = [
  choice('another-machine', 'Another machine of the same kind', (base) => withMachines(base, 1)),
  choice('one-machine-fewer', 'One machine fewer', (base) => withMachines(base, -1)),
  choice('faster-machine', 'A faster class of machine', fasterClass),
  choice('mixed-racks', 'Ware mixed in the same racks', mixedRacks),
  choice('fuller-racks', 'Part loads only from 75 % full', fullerRacks),
  choice('part-loads-later', 'Part loads wait twice as long', habit(WAIT, 2)),
  choice('clear-often', 'Clearing twice as often', habit(ROUNDS, 0.5)),
  choice('narrower-cup', 'A narrower cup, more to a rack', narrowerCup),
  choice('one-cup', 'One cup for all drinks', oneFor('cup')),
  choice('one-saucer', 'One saucer for all cups', oneFor('saucer')),
  plan('machine-out', 'A machine out of order all morning', withOneOut),
  plan('clearer-more', 'One more person clearing', people(['clearing', 'clearers'], 1)),
  plan('clearer-fewer', 'One fewer person clearing', people(['clearing', 'clearers'], -1)),
  plan('barista-more', 'One more barista', people(['counter', 'makers'], 1)),
  plan('barista-fewer', 'One fewer barista', people(['counter', 'makers'], -1)),
  plan('hand-more', 'One more person at the dishwasher', people(['washing', 'hands'], 1)),
  plan('hand-fewer', 'One fewer person at the dishwasher', people(['washing', 'hands'], -1)),
  plan('food-menu', 'Food ware through the machine, 8 racks an hour', foodMenu),
  plan('quicker-drying', 'Ware dry in half the time', quickerDrying),
  plan('more-guests', 'A fifth more guests', moreGuests),
  plan('longer-stay', 'Guests stay 10 minutes longer', longerStay),
  plan('more-takeaway', '10 points more take away', staysIn(-10)),
  plan('less-takeaway', '10 points fewer take away', staysIn(10)),
];
