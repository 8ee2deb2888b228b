/** The page's programs, as the build left them beside the command. */
import { readdir, readFile } from 'node:fs/promises';
import type { GivenScenario, LivePage, Template } from '../letter/live.js';
import { glanceAt } from '../questions/size/house-measures.js';
import { compile } from '../scenario/compile.js';
import { piecesPerRackOf } from '../scenario/rack-geometry.js';
import { readScenario } from '../scenario/read-scenario.js';
import { version } from './version.js';

/** @param scenario null: the blank letter, with the examples to begin from */
export async function livePage(scenario: GivenScenario | null): Promise<LivePage> {
  const programs = JSON.parse(
    await readFile(new URL('./page.json', import.meta.url), 'utf8'),
  ) as Omit<LivePage, 'given'>;
  return {
    ...programs,
    given: { version, scenario, templates: scenario === null ? await templates() : [] },
  };
}

/** The letter's typefaces as a style sheet. */
export const typefaces = (): Promise<string> =>
  readFile(new URL('./typefaces.css', import.meta.url), 'utf8');

async function templates(): Promise<Template[]> {
  const folder = new URL('../scenarios/', import.meta.url);
  const names = (await readdir(folder)).filter((name) => /\.ya?ml$/.test(name)).sort();
  return Promise.all(
    names.map(async (fileName) => {
      const text = await readFile(new URL(fileName, folder), 'utf8');
      const name = /^name: *"?([^"\n]*)/m.exec(text)?.[1] ?? fileName;
      const read = readScenario(text, fileName, { piecesPerRack: piecesPerRackOf });
      const glance = read.ok ? glanceAt(compile(read.scenario, piecesPerRackOf)) : null;
      return { fileName, name, text, glance };
    }),
  );
}
