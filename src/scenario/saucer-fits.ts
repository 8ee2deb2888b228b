/** The cups and glasses of a scenario on its saucers: what every command says of them, and what its lead warns of. */
import { nameOf } from '../quantities/name.js';
import {
  isMisfit,
  saucerFits,
  USUAL_CLEARANCE,
  type Clearance,
  type SaucerFit,
} from '../racking/saucer-fit.js';
import type { Input } from './inputs.js';
import type { Scenario } from './scenario.js';
import type { Warning } from '../quantities/flaw.js';

type Part = Pick<Scenario, 'ware' | 'menu' | 'supply'>;

/** Every cup and glass on every saucer. @param inputs tell which measures are typical, not the file's */
export function saucerFitsOf(
  { ware, supply }: Omit<Part, 'menu'>,
  inputs: readonly Pick<Input, 'path' | 'origin'>[],
): SaucerFit[] {
  const typical = new Set(inputs.flatMap((one) => (one.origin === 'default' ? [one.path] : [])));
  const list = Object.entries(ware);
  return saucerFits(
    list.flatMap(([id, { shape, foot, colour }]) =>
      shape === 'cup' || shape === 'glass'
        ? [{ id, footMm: foot ?? null, colour, typical: typical.has(`ware.${id}.foot`) }]
        : [],
    ),
    list.flatMap(([id, { shape, well, colour }]) =>
      shape === 'saucer'
        ? [
            {
              id,
              wellMm: well ?? null,
              colour,
              takes: supply?.saucers?.fits?.[id] ?? [],
              typical: typical.has(`ware.${id}.well`),
            },
          ]
        : [],
    ),
    clearanceOf(supply),
  );
}

const clearanceOf = (supply: Part['supply']): Clearance => {
  const given = supply?.saucers?.clearance;
  return given === undefined ? USUAL_CLEARANCE : { leastMm: given.least, mostMm: given.most };
};

/** Whether a setting or fall-back of the menu puts the two together. */
export const servedTogether = (menu: Part['menu'], { cup, saucer }: SaucerFit): boolean =>
  Object.values(menu)
    .flatMap(({ setting, fallBacks }) => [setting, ...(fallBacks ?? [])])
    .some((setting) => setting.includes(cup) && setting.includes(saucer));

/** Pairs of the menu that do not go together by measures of the file; typical measures are no ground for a warning. */
export const misfitWarnings = (scenario: Part, inputs: readonly Input[]): Warning[] =>
  saucerFitsOf(scenario, inputs)
    .filter((fit) => isMisfit(fit) && !fit.typical && servedTogether(scenario.menu, fit))
    .map((fit) => {
      const [cup, saucer] = [fit.cup, fit.saucer].map((id) => nameOf(id, scenario.ware[id]!));
      const mm = Math.round(Math.abs(fit.clearanceMm!) * 10) / 10;
      const why =
        fit.byMeasures === 'cup would slide'
          ? `slides on ${saucer}: ${mm} mm of play`
          : fit.clearanceMm! < 0
            ? `does not fit ${saucer}: its foot is ${mm} mm too wide for the well`
            : `is too tight on ${saucer}: only ${mm} mm of play`;
      return {
        code: 'saucer-misfit',
        path: `ware.${fit.cup}.foot`,
        message: `${cup} ${why}, yet the menu serves them together, so saucers are counted for it. Take the saucer out of the setting, name one that fits, or, if you have tried it, write it under supply.saucers.fits.`,
      };
    });
