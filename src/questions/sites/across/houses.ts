/** The houses that are compared at one site: as its row has it, and each alternative of the base that it can have. */
import { nameOf } from '../../../quantities/name.js';
import { piecesPerRackOf } from '../../../scenario/rack-geometry.js';
import { isGroup } from '../../../scenario/tree.js';
import { candidatesOf, type Candidate } from '../../compare/alternatives.js';
import type { Opened } from '../../question.js';
import type { Base } from '../site.js';

const reading = { piecesPerRack: piecesPerRackOf };

export interface SiteHouses {
  /** As it is first. */
  readonly candidates: readonly Candidate[];
  /** Alternatives that this site cannot have, with the reason. */
  readonly not: readonly { readonly id: string; readonly why: string }[];
}

export interface NamedAlternative {
  readonly id: string;
  readonly name: string;
}

export const alternativesOf = ({
  opened: { scenario },
}: Pick<Base, 'opened'>): NamedAlternative[] =>
  Object.entries(scenario.alternatives ?? {}).map(([id, slice]) => ({
    id,
    name: nameOf(id, slice),
  }));

/** @param opened a site: its tree has no alternatives of its own @param base whose alternatives are tried at it */
export function housesOf(opened: Opened, base: Pick<Base, 'opened'>): SiteHouses {
  const { alternatives = {} } = base.opened.scenario;
  const inFile = (base.opened.raw as { readonly alternatives?: Record<string, unknown> })
    .alternatives;
  const found = candidatesOf(opened, opened.scenario.name, reading);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  const candidates = [...found.all];
  const not: { id: string; why: string }[] = [];
  for (const [id, slice] of Object.entries(alternatives)) {
    // One at a time: what one site cannot have stands in the way of no other.
    const one = candidatesOf(
      {
        ...opened,
        scenario: { ...opened.scenario, alternatives: { [id]: slice } },
        raw: {
          ...(isGroup(opened.raw) ? opened.raw : {}),
          alternatives: { [id]: inFile![id] },
        },
      },
      opened.scenario.name,
      reading,
    );
    if (one.ok) candidates.push(one.all[1]!);
    else not.push({ id, why: one.problems.map(({ rule }) => rule).join('; ') });
  }
  return { candidates, not };
}
