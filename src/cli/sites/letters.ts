/** Letters of single sites: each the scenario of its row, opened as any scenario is. */
import { stringify } from 'yaml';
import { didYouMean } from '../../quantities/nearest.js';
import type { Site } from '../../questions/sites/site.js';
import { MistakeError } from '../mistakes.js';
import { letterOf } from '../write-report.js';

export interface SiteLetter {
  readonly id: string;
  /** Of the file, beside the page of all sites; and what of it is behind the table's name. */
  readonly name: string;
  readonly ending: string;
  readonly html: string;
}

export interface LettersWanted {
  /** Ids; `all` is every site. */
  readonly letters: readonly string[];
  readonly level: number | undefined;
  readonly days: number | undefined;
  readonly threads: number | undefined;
}

/** @throws MistakeError for ids that no site has */
export function sitesWithLetter(wanted: readonly string[], sites: readonly Site[]): Site[] {
  const ids = sites.map(({ line }) => line.id);
  if (wanted.length === 1 && wanted[0] === 'all' && !ids.includes('all')) return [...sites];
  const wrong = wanted.filter((id) => !ids.includes(id));
  if (wrong.length > 0)
    throw new MistakeError(
      wrong
        .map((id) => `--letter: "${id}" is no site of the table; ${didYouMean(id, ids)}`)
        .join('\n'),
    );
  return sites.filter(({ line }) => wanted.includes(line.id));
}

export async function siteLetters(
  { letters, level, days, threads }: LettersWanted,
  sites: readonly Site[],
  stem: string,
): Promise<SiteLetter[]> {
  const made: SiteLetter[] = [];
  for (const { line, opened } of sitesWithLetter(letters, sites)) {
    const letter = await letterOf(
      // Lines are not folded, so that boxes of the letter find each value where it stands.
      { fileName: `${line.id}.yaml`, text: stringify(opened.raw, { lineWidth: 0 }), opened },
      {
        given: {
          ...(level === undefined ? {} : { level }),
          ...(days === undefined ? {} : { days }),
        },
        threads,
      },
    );
    const html = letter.files.find(({ ending }) => ending === 'html')!.content;
    const ending = `${line.id}.html`;
    made.push({ id: line.id, name: `${stem}.${ending}`, ending, html });
  }
  return made;
}
