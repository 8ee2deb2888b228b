/**
 * The inputs of the study in the letter: the assumed first, each with its range and a number that leads
 * to its source; what other questions use (weights, energy) is folded away.
 */
import { cleanText, shorten } from '../tell/clean-text.js';
import type { ReportInput } from '../tell/context.js';
import { escapeHtml } from '../tell/escape-html.js';
import type { Formats } from '../tell/format.js';
import { cell, CELL_LENGTH, column, scrolled } from '../tell/html-parts.js';
import { inputWords } from '../tell/input-name.js';
import { english } from '../tell/words.js';

const basisOrder = ['assumed', 'practice', 'published', 'measured'] as const;

/** Inputs that no number of this letter depends on. */
const ofOtherQuestions =
  /^(?:supply|storage|alternatives|suit)\.|^costs\.|^ware\.[^.]+\.(?:mass|brim|colour)$|^washing\.machines(?:\[\d+\]|\.\d+|\.unlimited)?\.(?:water|energy|idlePower|detergent|rinseAid|price|installation|lifeYears)$/;

/** Inputs that most often move the answer, in the order of the day. */
const KEY =
  /^(?:arrivals\.(?:peak\.guests|slots\.parties|steps)|guests\.(?:dwell|staysIn)|seats\.count|clearing\.(?:every|clearers)|washing\.(?:partLoadWait|hands|machines\[0\]\.cycle))$/;
/** A value that is longer is a law or a list; the list of inputs has it. */
const LONGEST_VALUE = 24;

/** How much of the answer is measured, in a sentence; and on paper which of the inputs that matter are assumed. */
export function basisLine(inputs: readonly ReportInput[], formats: Formats): string {
  const say = english.letter;
  const used = inputs.filter(({ path }) => !ofOtherQuestions.test(path));
  if (used.length === 0) return '';
  const of = (wanted: ReportInput['basis']): string =>
    formats.count(used.filter(({ basis }) => basis === wanted).length);
  const assumed = used
    .filter(({ path, basis }) => basis === 'assumed' && KEY.test(path))
    .map(({ path, value }) => {
      const name = inputWords(path)?.label ?? path;
      return value.length > LONGEST_VALUE ? name : `${name} (${cleanText(value)})`;
    });
  return `${escapeHtml(say.basisLine(of('measured'), formats.count(used.length), of('assumed')))}${assumed.length === 0 ? '' : ` <span class="on-paper">${escapeHtml(say.basisKey(assumed.join('; ')))}</span>`}`;
}

export function inputsSection(inputs: readonly ReportInput[], formats: Formats): string {
  const say = english.letter;
  const used = inputs.filter(({ path }) => !ofOtherQuestions.test(path));
  const others = inputs.filter(({ path }) => ofOtherQuestions.test(path));
  const ordered = basisOrder.flatMap((basis) => used.filter((input) => input.basis === basis));
  const sources = [
    ...new Set(
      [...ordered, ...others]
        .map(({ source }) => cleanText(source))
        .filter((source) => source !== ''),
    ),
  ];
  const printed = new Set(ordered.map(({ source }) => cleanText(source)));
  const assumed = used.filter(({ basis }) => basis === 'assumed').length;
  return `<h2>${escapeHtml(say.inputsHead)}</h2>
<p>${escapeHtml(say.inputsIntro(formats.count(assumed), formats.count(used.length)))}</p>
<details class="folded"><summary>${escapeHtml(say.allInputs(formats.count(used.length)))}</summary>
${inputsTable(ordered, sources, say.inputsCaption)}
${others.length === 0 ? '' : `<details><summary>${escapeHtml(say.otherInputs(formats.count(others.length), others.length === 1))}</summary>\n${inputsTable(others, sources, say.otherInputsCaption)}\n</details>`}
${sources.length === 0 ? '' : `<h3 class="sources">${escapeHtml(say.sources)}</h3>\n<ol class="sources small">\n${sources.map((source) => `<li${printed.has(source) ? '' : ' class="screen"'}>${escapeHtml(shorten(source, CELL_LENGTH))}</li>`).join('\n')}\n</ol>`}
</details>`;
}

function inputsTable(
  inputs: readonly ReportInput[],
  sources: readonly string[],
  caption: string,
): string {
  const say = english.letter;
  const groups = basisOrder
    .map((basis) => ({ basis, list: inputs.filter((input) => input.basis === basis) }))
    .filter(({ list }) => list.length > 0);
  const bodies = groups.map(
    ({ basis, list }) =>
      `<tbody>\n<tr class="basis"><th scope="rowgroup" colspan="4">${escapeHtml(say.basis[basis])}</th></tr>\n${list.map((input) => inputRow(input, sources)).join('\n')}\n</tbody>`,
  );
  return scrolled(
    caption,
    `<table class="words"><caption>${escapeHtml(caption)}</caption><thead><tr>${[say.input, say.value, say.range, say.source].map(column).join('')}</tr></thead>\n${bodies.join('\n')}\n</table>`,
  );
}

function inputRow(
  { path, value, range, source, origin }: ReportInput,
  sources: readonly string[],
): string {
  const number = sources.indexOf(cleanText(source)) + 1;
  const from =
    number === 0 ? english.letter.origin[origin] : `${english.letter.origin[origin]}, ${number}`;
  return `<tr>${inputHead(path)}${cell(value)}${cell(range === null ? english.answer.none : english.answer.to(range[0], range[1]))}${cell(from)}</tr>`;
}

/**
 * What an input is: in words where there are any, with the name or the position that tells it from its
 * like, and its path (left out of print where there are words). Paths may break after their dots.
 */
function inputHead(path: string): string {
  const found = inputWords(path);
  const shown = `<span class="path"><bdi>${escapeHtml(shorten(cleanText(path), CELL_LENGTH)).replaceAll('.', '.<wbr>')}</bdi></span>`;
  if (found === null) return `<th scope="row">${shown}</th>`;
  const { label, which } = found;
  return `<th scope="row" class="named">${escapeHtml(label)}${which === '' ? '' : `: <bdi>${escapeHtml(which)}</bdi>`} ${shown}</th>`;
}
