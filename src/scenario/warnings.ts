/**
 * What is legal in a scenario but seldom wise.
 */
import type { Warning } from './warning.js';
import { nameOf } from '../quantities/name.js';
import type { Scenario } from './scenario.js';

/** Warnings that can be told from the scenario alone, before any rush is run. */
export function warningsOf(scenario: Scenario): Warning[] {
  const warnings: Warning[] = [];
  const warn = (code: string, path: string, message: string): void =>
    void warnings.push({ code, message, path });

  const { washing, arrivals, seats, guests } = scenario;
  if (washing.partLoadWait === null && (washing.partLoadsEvery ?? null) === null) {
    warn(
      'no-part-load-wait',
      'washing.partLoadWait',
      'Only full racks are washed: ware of which little is used may never fill one, and stays dirty all day. Give washing.partLoadWait, such as 6 min.',
    );
  }
  const expected = arrivals.slots?.parties ??
    arrivals.steps?.map((step) => step.parties) ?? [arrivals.peak?.guests ?? 0];
  if (expected.every((parties) => parties === 0))
    warn(
      'no-guests',
      'arrivals',
      'Nobody is expected: the rush will be empty unless days are given.',
    );

  const largest = guests.partySize.findLastIndex((share) => share > 0) + 1;
  if (seats.count !== null && largest > seats.count)
    warn(
      'party-larger-than-house',
      'seats.count',
      `Parties of ${largest} are expected but there are ${seats.count} seats: they will always leave.`,
    );

  const used = new Set(
    Object.values(scenario.menu).flatMap((drink) => [
      ...drink.setting,
      ...(drink.fallBacks ?? []).flat(),
    ]),
  );
  for (const [id, ware] of Object.entries(scenario.ware)) {
    if (!used.has(id))
      warn(
        'unused-ware',
        `ware.${id}`,
        `${nameOf(id, ware)} is in no drink's setting: none will be asked for.`,
      );
  }
  return warnings;
}
