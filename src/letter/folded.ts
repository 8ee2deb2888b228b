/** Parts of the letter that are folded to a line on a screen and printed whole: findings in groups, and cautions. */
import type { Caution } from '../tell/cautions.js';
import { cleanText } from '../tell/clean-text.js';
import { escapeHtml } from '../tell/escape-html.js';
import type { FindingList } from '../tell/finding-list.js';
import type { Formats } from '../tell/format.js';
import { listed, english } from '../tell/words.js';

/** In the open, or each group folded to a line that says how many there are; nothing where there are none. */
export function findingList(list: FindingList, formats: Formats): string {
  const lines = (items: readonly string[]): string =>
    `<ul>${items.map((item) => `<li>${escapeHtml(cleanText(item))}</li>`).join('')}</ul>`;
  const body =
    'items' in list
      ? list.items.length === 0
        ? ''
        : lines(list.items)
      : list.groups
          .filter(({ items }) => items.length > 0)
          .map(
            ({ title, items }) =>
              `<details class="folded"><summary>${escapeHtml(title)} (${formats.count(items.length)})</summary>\n${lines(items)}\n</details>`,
          )
          .join('\n');
  return body === '' ? '' : `<h2>${escapeHtml(list.title)}</h2>\n${body}`;
}

/** All cautions under a line that names them. */
export function cautionsSection(cautions: readonly Caution[]): string {
  const say = english.letter;
  return `<h2>${escapeHtml(say.cautionsHead)}</h2>\n<details class="folded"><summary>${escapeHtml(
    say.cautionsFolded(listed(cautions.map(({ title }) => title))),
  )}</summary>\n<dl>\n${cautions.map((caution) => cautionEntry(caution)).join('\n')}\n</dl>\n</details>`;
}

const cautionEntry = ({ title, text, defersTo }: Caution): string =>
  `<div><dt>${escapeHtml(title)}</dt><dd>${escapeHtml(text)} <span class="small">${escapeHtml(english.cautions.defers)}: ${escapeHtml(defersTo)}.</span></dd></div>`;
