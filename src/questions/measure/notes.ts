/** What of filled sheets does not fit together, though each part may be right. */
import type { CafeModel } from '../../cafe/model.js';
import { SLOT_MINUTES, clockText, type Sheet } from '../../measuring/sheet.js';
import { compile } from '../../scenario/compile.js';
import { piecesPerRackOf } from '../../scenario/rack-geometry.js';
import type { Scenario } from '../../scenario/scenario.js';
import { expectedParties } from './foretold.js';
import { meanFill } from './measured-work.js';

/** Seats taken that differ from the counts by more guests than this and this share are worth a look. */
const ODD_GUESTS = 4;
const ODD_SHARE = 0.25;
/** A morning this many times busier or quieter than expected is no usual one. */
const UNUSUAL = 1.5;

export function notesOf(sheets: readonly Sheet[], scenario: Scenario): string[] {
  const model = compile(scenario, piecesPerRackOf);
  const several = sheets.length > 1;
  const notes = sheets.flatMap((sheet) =>
    notesOfMorning(sheet, scenario, model).map((note) =>
      several ? `${sheet.date}: ${note}` : note,
    ),
  );
  const fill = meanFill(sheets);
  if (fill !== null)
    notes.push(
      `Racks went ${Math.round(100 * fill.share)} % full on average (${fill.n} loads). The rush works this out from its rules; it is not an input.`,
    );
  return notes;
}

function notesOfMorning(sheet: Sheet, { guests }: Scenario, model: CafeModel): string[] {
  const notes: string[] = [];
  const largest = Math.max(0, ...sheet.stays.map((stay) => stay.guests));
  if (largest > guests.partySize.length)
    notes.push(
      `A party of ${largest} was timed, and the scenario knows parties of up to ${guests.partySize.length}. The tally counts it as one of the largest; a coach party is better left off the sheet and tried as an alternative.`,
    );
  const parties = sheet.tally.reduce(
    (sum, { came, away }) => sum + [...came, ...away].reduce((all, one) => all + one, 0),
    0,
  );
  const hours = (sheet.tally.length * SLOT_MINUTES * 60_000) / model.closingMs;
  const expected = expectedParties(model);
  if (parties > 0 && hours > 0.9 && (parties > expected * UNUSUAL || parties * UNUSUAL < expected))
    notes.push(
      `${parties} parties came; the scenario expects ${Math.round(expected)} on a mean day. One morning does not say which is right: ask the till.`,
    );
  let inside = sheet.before.reduce((sum, count, size) => sum + count * (size + 1), 0);
  for (const { minute, came, went, seats } of sheet.tally) {
    if (seats !== null && Math.abs(seats - inside) > Math.max(ODD_GUESTS, ODD_SHARE * inside)) {
      notes.push(
        `At ${clockText(minute)} ${seats} seats were taken, but the counts leave ${inside} guests. Check the tally around then.`,
      );
      break;
    }
    came.forEach((count, size) => (inside += (count - went[size]!) * (size + 1)));
  }
  return notes;
}
