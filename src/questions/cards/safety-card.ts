/** The safety card: the usual cautions, whose rules outrank them, and room for numbers that only the house knows. */
import { english } from '../../tell/words.js';
import { familyOf, rackKindOf } from '../../scenario/pieces-per-rack.js';
import { rackOf, vesselOf } from '../../scenario/rack-geometry.js';
import { rackLayout } from '../../racking/layout.js';
import { cautionsFor, type Caution } from '../../tell/cautions.js';
import { escapeHtml } from '../../tell/escape-html.js';
import { blank, cardOf, para, type Card, type CardDesk } from './card.js';

/** Mass of a full rack where no ware tells its own (common practice, no source). */
const USUAL_RACK_G = [8000, 12_000] as const;

export function safetyCard(desk: CardDesk): readonly Card[] {
  const { context } = desk;
  const say = english.cards.safety;
  const usual = cautionsFor(context).map((caution) =>
    caution.id === 'lifting' ? { ...caution, text: say.lifting(rackMass(desk)) } : caution,
  );
  const extra = Object.entries(say.extra).map(([id, caution]): Caution => ({ id, ...caution }));
  const entries = [...usual, ...extra].map(
    ({ title, text, defersTo }) =>
      `<div><dt>${escapeHtml(title)}</dt><dd>${escapeHtml(text)} <span>${escapeHtml(`${english.cautions.defers}: ${defersTo}.`)}</span></dd></div>`,
  );
  const body = `${para(say.scalded, 'card-strong')}
<div class="card-blanks">${Object.values(say.lines)
    .map((label) => blank(label))
    .join('')}</div>
<dl class="card-cautions">${entries.join('\n')}</dl>`;
  return [cardOf(desk, 'safety', say.title, body)];
}

/** Of the heaviest full rack of known mass, else the usual range. */
function rackMass({ scenario, formats }: CardDesk): string {
  const masses = Object.entries(scenario.ware).flatMap(([id, ware]) => {
    const [vessel, rack] = [
      vesselOf(ware),
      rackOf(rackKindOf(scenario.racks, familyOf(id, ware)), scenario.racks),
    ];
    if (vessel === null || rack === null || ware.mass === undefined) return [];
    const layout = rackLayout(vessel, rack, scenario.racks?.loading ?? 'best');
    return layout.pieces > 0 ? [layout.loadedMassG] : [];
  });
  return masses.length > 0
    ? formats.mass(Math.max(...masses))
    : english.cards.safety.liftingRange(
        formats.mass(USUAL_RACK_G[0]),
        formats.mass(USUAL_RACK_G[1]),
      );
}
