/** The report's context from the scenario that the answer is of. */
import { nameOf } from '../quantities/name.js';
import { closingMs } from '../scenario/arrivals.js';
import { compile, openingClockMs } from '../scenario/compile.js';
import type { Input } from '../scenario/inputs.js';
import { kindOf } from '../scenario/kinds.js';
import type { PiecesPerRack } from '../scenario/pieces-per-rack.js';
import { shown } from '../scenario/problems.js';
import type { Scenario } from '../scenario/scenario.js';
import { machineClass } from '../catalogue/catalogue.js';
import type { ReportContext, ReportInput, ReportMachine } from './context.js';
import type { Units } from './measures.js';

const MINUTE = 60_000;

/**
 * @param units those the reader chose; metric where nothing is chosen
 * @param kind the kind of day that is reported; the file's own where none is named
 */
export function contextOf(
  file: Scenario,
  inputs: readonly Input[],
  version: string,
  piecesPerRack?: PiecesPerRack,
  units: Units = 'metric',
  kind?: string,
): ReportContext {
  const { scenario } = kindOf(file, kind, file.seed);
  const model = compile(scenario, piecesPerRack);
  const { hands, machines } = model.washing;
  return {
    locale: scenario.locale ?? 'en',
    currency: scenario.currency,
    units,
    openingMinute: 'from' in scenario.hours ? openingClockMs(scenario) / MINUTE : null,
    openMinutes: closingMs(scenario) / MINUTE,
    seats: model.seats.count,
    ware: Object.entries(scenario.ware).map(([id, ware]) => ({
      id,
      name: nameOf(id, ware),
      kind: ware.shape ?? 'other',
    })),
    machines: machinesOf(scenario),
    capacity: {
      machines: machines?.length ?? null,
      makers: model.makers,
      hands:
        hands === 'makers' ? model.makers : hands === 'clearers' ? model.clearing.clearers : hands,
      clearers: model.clearing.every === null ? null : model.clearing.clearers,
    },
    hotDrinks: true,
    inputs: inputs.map(reportInput),
    version,
  };
}

function machinesOf({ washing }: Scenario): ReportMachine[] {
  const list = Array.isArray(washing.machines) ? washing.machines : [washing.machines.unlimited];
  return list.map((machine) => ({
    name:
      machine.class === undefined
        ? 'Dishwasher'
        : (machineClass(machine.class)?.name ?? machine.class),
    sanitises: 'unknown',
  }));
}

function reportInput({ path, value, basis, range, source, origin }: Input): ReportInput {
  return {
    path,
    value: plain(value),
    basis,
    range: range && [plain(range[0]), plain(range[1])],
    source,
    origin,
  };
}

/** A value as a person would write it: text as it stands, groups as one line. */
function plain(value: unknown): string {
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.map(plain).join(', ');
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .map(([key, part]) => `${key} ${plain(part)}`)
      .join(', ');
  }
  return shown(value);
}
