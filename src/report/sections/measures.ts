/** Lengths, masses, volumes and temperatures in the units that the reader chose. */
import { US_FLUID_OUNCE_ML } from '../../suiting/papers.js';
import type { ReportContext } from '../context.js';
import type { Formats } from '../format.js';
import type { Words } from '../words.js';

export type Units = 'metric' | 'us';

/** The report's context, and the units it is to be told in; metric where nothing is said. */
export type SectionContext = ReportContext & { readonly units?: Units };

export interface Measures {
  /** mm → "1.9 mm" or "0.07 in". */
  length(mm: number): string;
  /** kg → "7.8 kg" or "17.2 lb". */
  load(kg: number): string;
  /** g → "275 g" or "9.7 oz". */
  mass(g: number): string;
  /** ml → "210 ml" or "7.1 fl oz" (US). */
  volume(ml: number): string;
  /** °C → "51 °C" or "124 °F". */
  temperature(celsius: number): string;
  /** cm → "90 cm" or "35 in". */
  height(cm: number): string;
}

/** Exact by definition: NIST Handbook 44 (2024), appendix C: inch, avoirdupois pound of 16 ounces. */
const MM_AN_INCH = 25.4;
const KG_A_POUND = 0.45359237;
const G_AN_OUNCE = (KG_A_POUND * 1000) / 16;

export function measuresFor(units: Units | undefined, { count, decimal }: Formats, words: Words): Measures {
  const unit = words.sections.units;
  const told = (figure: string, name: string): string => `${figure}\u00A0${name}`;
  return units === 'us'
    ? {
        length: (mm) => told(decimal(mm / MM_AN_INCH, 2), unit.inch),
        load: (kg) => told(decimal(kg / KG_A_POUND), unit.pound),
        mass: (g) => told(decimal(g / G_AN_OUNCE), unit.ounce),
        volume: (ml) => told(decimal(ml / US_FLUID_OUNCE_ML), unit.fluidOunce),
        temperature: (celsius) => told(count(Math.round((celsius * 9) / 5 + 32)), unit.fahrenheit),
        height: (cm) => told(count(Math.round((cm * 10) / MM_AN_INCH)), unit.inch),
      }
    : {
        length: (mm) => told(Number.isInteger(mm) ? count(mm) : decimal(mm), unit.millimetre),
        load: (kg) => told(decimal(kg), unit.kilogram),
        mass: (g) => told(count(Math.round(g)), unit.gram),
        volume: (ml) => told(count(Math.round(ml)), unit.millilitre),
        temperature: (celsius) => told(count(Math.round(celsius)), unit.celsius),
        height: (cm) => told(count(Math.round(cm)), unit.centimetre),
      };
}
