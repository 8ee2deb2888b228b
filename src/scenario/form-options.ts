/** Words that a form field may hold, from elsewhere in the scenario or from the classes. */
import {
  machineClass,
  machineClassIds,
  rackKind,
  rackKindIds,
  wareClass,
  wareClassIds,
} from '../catalogue/catalogue.js';
import { nameOf } from '../quantities/name.js';
import type { RawField } from './form-fields.js';
import type { FieldOption } from './form-types.js';
import { dotted, type Path } from './path.js';
import type { Scenario } from './scenario.js';

const named = (ids: readonly string[], nameFor: (id: string) => string): FieldOption[] =>
  ids.map((id) => ({ word: id, value: id, name: nameFor(id) }));

/** The listed kinds of rack, and those of the house's own. */
export const kindsIn = (racks: Scenario['racks']): string[] => [
  ...new Set([...rackKindIds(), ...Object.values(racks?.families ?? {})]),
];

/** Words of a field that come from elsewhere in the scenario or from the classes. */
export function optionsOf({ at, words }: RawField, { ware, menu, racks }: Scenario): FieldOption[] {
  const wares = (): FieldOption[] => named(Object.keys(ware), (id) => nameOf(id, ware[id]!));
  const last = at.at(-1);
  if (dotted(at) === 'clearing') return [...words, { word: 'inRounds', value: {} }];
  if (at[0] === 'ware' && last === 'like')
    return named(wareClassIds(), (id) => wareClass(id)!.name);
  if (at[0] === 'washing' && last === 'class')
    return named(machineClassIds(), (id) => machineClass(id)!.name);
  if (at[0] === 'racks' && at[1] === 'families')
    return named(kindsIn(racks), (id) => rackKind(id)?.name ?? id);
  if (at[0] === 'menu' && (last === 'setting' || last === 'fallBacks'))
    return [{ word: 'takeaway', value: 'takeaway' }, ...wares()];
  if (at[0] === 'suit' && last === 'vessel') return wares();
  if (at[0] === 'supply' && last === 'drinks')
    return named(Object.keys(menu), (id) => nameOf(id, menu[id]!));
  return [...words];
}

export const isChosen = (at: Path): boolean =>
  (at[0] === 'ware' && at.at(-1) === 'like') ||
  (at[0] === 'washing' && at.at(-1) === 'class') ||
  (at[0] === 'racks' && at[1] === 'families');
