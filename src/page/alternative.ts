/** A change that was tried, as an alternative of the scenario it was tried on. */
import { dotted } from '../scenario/path.js';
import type { Edit } from '../scenario/edit.js';
import type { FormGroup } from '../scenario/input-forms.js';
import { differencesOf } from './differences.js';
import { freshId } from './forms/edit-of.js';
import type { Settled } from './store.js';

/** @returns the alternative to be added; null where the change cannot be one (ware or drinks came or went, or nothing changed) */
export function alternativeOf(
  name: string,
  before: Pick<Settled, 'groups' | 'view'>,
  groups: readonly FormGroup[],
): Edit | null {
  const differences = differencesOf(before.groups, groups);
  const changes = new Map<string, string>();
  for (const { field, from, to } of differences) {
    if (to === null) return null;
    const [top, place] = [field.at.slice(0, 2).join('.'), field.at[2]];
    if (from !== null) changes.set(dotted(field.at), to);
    // A machine more: its class says it all, other figures are the class's own.
    else if (top === 'washing.machines' && typeof place === 'number') {
      if (field.at[3] === 'class') changes.set(dotted(field.at.slice(0, 3)), `{ class: ${to} }`);
    } else return null;
  }
  if (changes.size === 0) return null;
  const taken = groups
    .find(({ id }) => id === 'alternatives')
    ?.parts.map(({ at }) => String(at[1]));
  const lines = [...changes].map(([path, value]) => `${JSON.stringify(path)}: ${value}`);
  return {
    kind: 'set',
    path: ['alternatives', freshId(name, taken ?? [])],
    flow: `{ name: ${JSON.stringify(name)}, change: { ${lines.join(', ')} } }`,
  };
}
