/**
 * What to ask a supplier: standard tests by name, and notes that the sheet carries.
 *
 * Nothing is scored here. A vessel for which nobody has shown a report has an open question, not a low mark.
 */
import type { Material } from './facts.js';
import type { Shape, WareSheet } from './model.js';

export interface StandardTest {
  readonly standard: string;
  /** What it is about, as a buyer would say it. */
  readonly plain: string;
  readonly of: string;
  readonly materials: readonly Material[];
  readonly ask: string;
}

/** In the order in which they are asked. Titles as catalogues of standards give them. */
export const TESTS: readonly StandardTest[] = [
  {
    standard: 'EN 12980',
    plain: 'knocks',
    of: 'impact resistance',
    materials: ['ceramic', 'glass'],
    ask: 'impact energy at the rim at which it chipped or broke',
  },
  {
    standard: 'EN 1183',
    plain: 'sudden heat',
    of: 'thermal shock and thermal shock endurance',
    materials: ['ceramic', 'glass'],
    ask: 'temperature difference survived',
  },
  {
    standard: 'EN 12875',
    plain: 'dishwashing',
    of: 'mechanical dishwashing resistance',
    materials: ['ceramic', 'glass', 'steel'],
    ask: 'cycles before decoration or surface changed',
  },
  {
    standard: 'EN 1217',
    plain: 'water absorption',
    of: 'water absorption of ceramic articles',
    materials: ['ceramic'],
    ask: 'absorption in per cent',
  },
  {
    standard: 'ISO 6486',
    plain: 'lead and cadmium',
    of: 'release of lead and cadmium from ceramic ware',
    materials: ['ceramic'],
    ask: 'report on this glaze and colour',
  },
  {
    standard: 'ISO 7086',
    plain: 'lead and cadmium',
    of: 'release of lead and cadmium from glass hollowware',
    materials: ['glass'],
    ask: 'report on this glass and its decoration',
  },
];

export interface ChecklistLine {
  readonly ware: string;
  readonly standard: string;
  readonly of: string;
  readonly ask: string;
  /** Whether the sheet says that a report has been shown. */
  readonly shown: boolean;
}

/** Tests to ask of one ware. A standard counts as shown when the sheet's text begins with its number ("EN 12875-1"). */
export function checklistFor(ware: string, shape: Shape | null, sheet: WareSheet): ChecklistLine[] {
  if (shape === 'spoon' || sheet.material === 'paper') return [];
  return TESTS.filter((test) => test.materials.includes(sheet.material)).map(
    ({ standard, of, ask }) => ({
      ware,
      standard,
      of,
      ask,
      shown: sheet.tests.some((named) => sameStandard(named, standard)),
    }),
  );
}

function sameStandard(named: string, standard: string): boolean {
  const found = /\b(EN|ISO)\s*(\d+)/i.exec(named);
  return found !== null && `${found[1]!.toUpperCase()} ${found[2]!}` === standard;
}

/** Colour is stated and never weighed. */
export const COLOUR_NOTE =
  'it may change how a drink tastes, but the evidence is thin and conflicting (Van Doorn et al., Flavour 2014;3:10), so it does not count here';

/** Notes that the sheet carries as the user stated them. */
export function notesFor(sheet: WareSheet, shape: Shape | null): string[] {
  const notes: string[] = [];
  if (sheet.inside === 'bowl')
    notes.push('round inside, as stated: milk turns over and patterns come easily');
  if (sheet.inside === 'straight')
    notes.push('straight inside, as stated: patterns are harder to pour');
  if (sheet.stains !== null) notes.push(`stains: ${sheet.stains}`);
  if (sheet.chips !== null)
    notes.push(`chips: ${sheet.chips}; throw chipped or crazed ware away (Food Code 4-101)`);
  if (sheet.stacks === true)
    notes.push('stacks, as stated; on a hot machine only as its manual allows');
  if (sheet.stacks === false) notes.push('does not stack, as stated');
  if (shape === 'glass') {
    if (sheet.safetyGlass === 'toughened')
      notes.push('toughened, as stated: it breaks into crumbs, sometimes long after a knock');
    else if (sheet.safetyGlass === 'heat-resistant')
      notes.push('heat-resistant, as stated: it breaks into shards');
    else if (sheet.safetyGlass === 'plain')
      notes.push('plain glass, as stated: not for hot drinks unless EN 1183 says so');
  }
  return notes;
}

/** "knocks (EN 12980)" for each of these standards. */
export const plainTests = (standards: readonly string[]): string[] =>
  TESTS.filter(({ standard }) => standards.includes(standard)).map(
    ({ standard, plain }) => `${plain} (${standard})`,
  );
