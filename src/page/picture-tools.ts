/** Under each picture of the letter, in one menu: take it along as a drawing or as dots, and its figures as a table. */
import { safeCell } from '../tell/charts/picture-files.js';
import { standaloneSvg } from '../tell/charts/standalone-svg.js';
import * as english from '../tell/english.js';
import { asPng, save } from './saving.js';

export function addPictureTools(within: HTMLElement): void {
  for (const section of within.querySelectorAll<HTMLElement>('.beside')) {
    const figure = section.querySelector('figure');
    const svg = figure?.querySelector('svg');
    if (
      figure === null ||
      svg === null ||
      svg === undefined ||
      section.querySelector('.tools') !== null
    )
      continue;
    const title = section.querySelector('h3')?.textContent ?? '';
    const tools = document.createElement('details');
    tools.className = 'tools';
    const head = document.createElement('summary');
    head.textContent = english.page.savePicture;
    head.setAttribute('aria-label', `${english.page.savePicture}: ${title}`);
    const menu = document.createElement('div');
    tools.append(head, menu);
    const button = (label: string, act: () => void): void => {
      const one = document.createElement('button');
      one.type = 'button';
      one.textContent = label;
      one.setAttribute('aria-label', `${label}: ${title}`);
      one.onclick = act;
      menu.append(one);
    };
    const drawing = (): string => standaloneSvg(new XMLSerializer().serializeToString(svg));
    button(english.page.pictureSvg, () => save(`${section.id}.svg`, 'image/svg+xml', drawing()));
    button(
      english.page.picturePng,
      () => void asPng(drawing()).then((blob) => save(`${section.id}.png`, 'image/png', blob)),
    );
    const table = section.querySelector('table');
    if (table !== null)
      button(english.page.tableCsv, () => save(`${section.id}.csv`, 'text/csv', tableCsv(table)));
    figure.previousElementSibling?.append(tools);
  }
}

/** RFC 4180, the figures as they are shown. */
const tableCsv = (table: HTMLTableElement): string =>
  [...table.rows]
    .map((row) => `${[...row.cells].map((cell) => safeCell(cell.textContent ?? '')).join(',')}\r\n`)
    .join('');
