/** Which cautions go with a report, and the temperatures that the Food Code asks for. */
import type { ReportContext } from './context.js';
import { formatsFor, type Formats } from './format.js';
import { english } from './words.js';

/** A temperature as the code gives it, in both units (not converted: the code rounds each). */
export interface Temperature {
  readonly celsius: number;
  readonly fahrenheit: number;
}

const at = (celsius: number, fahrenheit: number): Temperature => ({ celsius, fahrenheit });

/**
 * FDA Food Code (2009 and later): wash water of mechanical warewashing 4-501.110, hot-water rinse
 * 4-501.112, surface of the utensil 4-703.11(B).
 */
export const foodCode = {
  wash: {
    stationarySingleTemperature: at(74, 165),
    stationaryDualTemperature: at(66, 150),
    chemicalLeast: at(49, 120),
  },
  rinse: { least: at(82, 180), leastStationarySingleTemperature: at(74, 165), most: at(90, 194) },
  utensilSurface: at(71, 160),
} as const;

export interface Caution {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Whose rules outrank this text. */
  readonly defersTo: string;
}

const CAUTION_ORDER = [
  'scalds',
  'sanitising',
  'services',
  'chemicals',
  'chipped',
  'brokenGlass',
  'lifting',
  'stacks',
] as const;

/** The cautions that apply: to hot drinks, to the machines there are, to glass, and to anything lifted or stacked. */
export function cautionsFor(
  context: Pick<
    ReportContext,
    'ware' | 'machines' | 'hotDrinks' | 'locale' | 'currency' | 'openingMinute'
  >,
): Caution[] {
  const kinds = new Set(context.ware.map(({ kind }) => kind));
  const machine = context.machines.length > 0;
  const applies: Record<(typeof CAUTION_ORDER)[number], boolean> = {
    scalds: context.hotDrinks || machine,
    sanitising: machine,
    services: machine,
    chemicals: machine,
    chipped: ['cup', 'glass', 'saucer', 'plate', 'other'].some((kind) => kinds.has(kind as 'cup')),
    brokenGlass: kinds.has('glass'),
    lifting: context.ware.length > 0,
    stacks: context.hotDrinks && (kinds.has('cup') || kinds.has('glass')),
  };
  return CAUTION_ORDER.filter((id) => applies[id]).map((id) => ({
    id,
    ...(id === 'sanitising' ? sanitising(context) : english.cautions[id]),
  }));
}

function sanitising(
  context: Pick<ReportContext, 'machines' | 'locale' | 'currency' | 'openingMinute'>,
): Omit<Caution, 'id'> {
  const formats = formatsFor(context);
  const show = (temperature: Temperature): string => temperatureText(temperature, formats);
  const kinds = new Set(context.machines.map(({ sanitises }) => sanitises));
  const only = kinds.size === 1 ? [...kinds][0]! : 'unknown';
  const chosen = {
    hot: english.cautions.sanitisingHot,
    chemical: english.cautions.sanitisingChemical,
    unknown: english.cautions.sanitisingUnknown,
  }[only];
  const text = chosen.text({
    washSingle: show(foodCode.wash.stationarySingleTemperature),
    washDual: show(foodCode.wash.stationaryDualTemperature),
    washChemical: show(foodCode.wash.chemicalLeast),
    rinse: show(foodCode.rinse.least),
    rinseSingle: show(foodCode.rinse.leastStationarySingleTemperature),
    rinseMost: show(foodCode.rinse.most),
    surface: show(foodCode.utensilSurface),
  });
  return { title: chosen.title, text, defersTo: chosen.defersTo };
}

const temperatureText = ({ celsius, fahrenheit }: Temperature, formats: Formats): string =>
  `${formats.count(celsius)} °C (${formats.count(fahrenheit)} °F)`;
