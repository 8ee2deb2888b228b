/** Letters of single sites: each the scenario of its row, opened as any scenario is. */
import { stringify } from 'yaml';
import { didYouMean } from '../../quantities/nearest.js';
import type { Site } from '../../questions/sites/site.js';
import type { Made, MadeFrom } from '../../questions/made.js';
import { sha256 } from '../made.js';
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

/** The command makes the letter; the letter holds the site's own scenario, and that is what it was made from. */
function ofSite(made: Made, id: string, scenario: MadeFrom): Made {
  const { settings, files: _, ...rest } = made;
  return { ...rest, command: `${made.command} --letter ${id}`, settings, scenario };
}

export async function siteLetters(
  { letters, level, days, threads }: LettersWanted,
  sites: readonly Site[],
  stem: string,
  made: Made,
): Promise<SiteLetter[]> {
  const written: SiteLetter[] = [];
  for (const { line, opened } of sitesWithLetter(letters, sites)) {
    const fileName = `${line.id}.yaml`;
    // Lines are not folded, so that boxes of the letter find each value where it stands.
    const text = stringify(opened.raw, { lineWidth: 0 });
    const letter = await letterOf(
      {
        fileName,
        text,
        opened,
        made: ofSite(made, line.id, { file: fileName, sha256: sha256(text) }),
      },
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
    written.push({ id: line.id, name: `${stem}.${ending}`, ending, html });
  }
  return written;
}
