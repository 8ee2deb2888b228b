import { parse, stringify } from 'yaml';
import { formatProblem } from '../../src/scenario/problems.js';
import { readScenario, type ReadResult } from '../../src/scenario/read-scenario.js';

/** A small valid scenario; tests change lines of it. */
export const valid = `name: Harbour Steps
currency: EUR
staffHour: 20 EUR
hours: { from: "07:00", to: "08:00" }
arrivals:
  slots: { every: 30 min, parties: [6, 9] }
guests:
  partySize: { 1: 60 %, 2: 40 %, 3: 0 % }
  staysIn: 40 %
menu:
  flat-white: { share: 75 %, setting: [cup, saucer], making: 40 s }
  tea: { share: 25 %, setting: [mug], fallBacks: [takeaway] }
ware:
  cup: { price: 4 EUR, perRack: 16, family: china }
  saucer: { like: saucer }
  mug: { price: 5 EUR, perRack: 12, family: china, drying: 3 min }
seats: { count: 20 }
counter: { makers: 2, making: 45 s }
clearing: atOnce
washing:
  machines:
    - { class: undercounter }
`;

/** The valid scenario with one piece of its text replaced; the piece must be there once. */
export function changed(from: string, to: string, text = valid): string {
  if (text.split(from).length !== 2) throw new Error(`"${from}" is not there exactly once`);
  return text.replace(from, () => to);
}

/** Problems as they are shown, without the name of the file: "4:7: hours.to: ...". */
export function problemsOf(text: string | Uint8Array): string[] {
  const read = readScenario(text, 'a.yaml');
  return read.ok ? [] : read.problems.map((one) => formatProblem(one).replace(/^a\.yaml:/, ''));
}

/** Reads a text that must be valid. */
export function accepted(text: string | Uint8Array): Extract<ReadResult, { ok: true }> {
  const read = readScenario(text, 'a.yaml');
  if (!read.ok) throw new Error(read.problems.map(formatProblem).join('\n'));
  return read;
}

/** The valid scenario as a tree after a change, written back as YAML. */
export function edited(change: (tree: Record<string, Record<string, unknown>>) => void): string {
  const tree = parse(valid) as Record<string, Record<string, unknown>>;
  change(tree);
  return stringify(tree);
}
