/**
 * Every figure that the suitability checks rest on, with its unit, plausible range, basis and source.
 *
 * Nothing here is measured in the reader's own house: what the scenario states goes first, and each
 * fact that had to be used instead is stated beside the answer.
 */
export type Basis = 'measured' | 'published' | 'practice' | 'assumed';

export interface Fact {
  readonly value: number;
  readonly range: readonly [number, number];
  readonly unit: string;
  readonly basis: Basis;
  readonly source: string;
}

const memory = 'from memory; check before relying on it';

export const FACTS = {
  // Strength
  doseG: {
    value: 20,
    range: [18, 23],
    unit: 'g',
    basis: 'practice',
    source: 'common practice: a double shot',
  },
  brewRatio: {
    value: 2,
    range: [1.8, 2.5],
    unit: 'g in the cup a gram of coffee',
    basis: 'practice',
    source: 'common practice: a double shot',
  },
  extraction: {
    value: 0.2,
    range: [0.18, 0.22],
    unit: 'share of the dose',
    basis: 'practice',
    source: 'common practice: a double shot; 16 to 19 % for a short one',
  },
  tds: {
    value: 0.1,
    range: [0.08, 0.12],
    unit: 'share of the drink by mass',
    basis: 'practice',
    source: 'common practice: espresso',
  },
  fillCeramic: {
    value: 0.95,
    range: [0.92, 0.97],
    unit: 'share of the brim',
    basis: 'practice',
    source: 'common practice, no source',
  },
  fillPaper: {
    value: 0.88,
    range: [0.85, 0.92],
    unit: 'share of the brim',
    basis: 'practice',
    source: 'common practice, no source',
  },
  airInFoam: {
    value: 0.6,
    range: [0.4, 0.8],
    unit: 'share of the foam by volume',
    basis: 'assumed',
    source: memory,
  },
  parity: {
    value: 0.1,
    range: [0.05, 0.15],
    unit: 'share, either way',
    basis: 'assumed',
    source: memory,
  },
  // Temperatures
  roomC: {
    value: 21,
    range: [18, 26],
    unit: '°C',
    basis: 'assumed',
    source: 'common practice, no source',
  },
  milkFromC: {
    value: 5,
    range: [2, 8],
    unit: '°C',
    basis: 'practice',
    source: 'common practice: milk from the refrigerator',
  },
  servedC: {
    value: 62,
    range: [55, 68],
    unit: '°C',
    basis: 'practice',
    source: 'common practice: a milk drink as poured',
  },
  servedWaterC: { value: 75, range: [68, 85], unit: '°C', basis: 'assumed', source: memory },
  warmedC: {
    value: 50,
    range: [40, 60],
    unit: '°C',
    basis: 'assumed',
    source: 'a cup warmed on the machine; ' + memory,
  },
  preferredC: {
    value: 60,
    range: [52, 68],
    unit: '°C',
    basis: 'published',
    source: 'Lee & O’Mahony, J Food Sci 2002;67:2774: 59.8 ± 8.1 °C',
  },
  firstSipMin: { value: 2, range: [1, 4], unit: 'min', basis: 'assumed', source: memory },
  // Matter
  milkHeat: {
    value: 3.93,
    range: [3.8, 4.0],
    unit: 'J/(g K)',
    basis: 'published',
    source: 'whole milk: Fox & McSweeney, Dairy Chemistry and Biochemistry, sec. 11.9',
  },
  waterHeat: {
    value: 4.186,
    range: [4.18, 4.2],
    unit: 'J/(g K)',
    basis: 'published',
    source: 'water: any handbook table of specific heats',
  },
  milkDensity: {
    value: 1.03,
    range: [1.02, 1.035],
    unit: 'g/ml',
    basis: 'practice',
    source: 'whole milk; ' + memory,
  },
  latentHeat: {
    value: 2257,
    range: [2250, 2260],
    unit: 'J/g',
    basis: 'published',
    source: 'steam tables at 100 °C, from memory',
  },
  paperMassG: {
    value: 12,
    range: [8, 18],
    unit: 'g',
    basis: 'assumed',
    source: 'a paper cup; ' + memory,
  },
  wallMm: { value: 4, range: [2, 7], unit: 'mm', basis: 'assumed', source: memory },
  // Still air
  topAir: {
    value: 8,
    range: [5, 12],
    unit: 'W/(m² K)',
    basis: 'assumed',
    source: 'free convection over a small warm disc; ' + memory,
  },
  topRadiation: {
    value: 6,
    range: [5, 7],
    unit: 'W/(m² K)',
    basis: 'published',
    source: '4 ε σ T³ near 45 °C, ε = 0.9 (Stefan–Boltzmann law)',
  },
  wallAir: {
    value: 10,
    range: [7, 14],
    unit: 'W/(m² K)',
    basis: 'assumed',
    source: 'free convection and radiation from a warm wall; ' + memory,
  },
  wallLiquid: {
    value: 300,
    range: [150, 600],
    unit: 'W/(m² K)',
    basis: 'assumed',
    source: 'still liquid against a wall; ' + memory,
  },
  humidity: { value: 0.5, range: [0.3, 0.7], unit: 'share', basis: 'assumed', source: memory },
  foamConductivity: {
    value: 0.25,
    range: [0.1, 0.4],
    unit: 'W/(m K)',
    basis: 'assumed',
    source: 'half air, half milk; ' + memory,
  },
  hotWallC: {
    value: 51,
    range: [48, 56],
    unit: '°C',
    basis: 'published',
    source:
      'held for two minutes 51 °C burns: table after Moritz & Henriques, Am J Pathol 1947;23:695',
  },
  // Grip
  heavyG: {
    value: 650,
    range: [450, 800],
    unit: 'g',
    basis: 'assumed',
    source: 'filled mass; ' + memory,
  },
  openingWidthMm: { value: 25, range: [22, 30], unit: 'mm', basis: 'assumed', source: memory },
  openingHeightMm: {
    value: 45,
    range: [40, 55],
    unit: 'mm',
    basis: 'assumed',
    source: 'two fingers; ' + memory,
  },
  fingerMm: {
    value: 22.5,
    range: [18, 24],
    unit: 'mm',
    basis: 'assumed',
    source: 'half of the height two fingers are said to need; ' + memory,
  },
  // Fit
  leanestFill: {
    value: 0.8,
    range: [0.75, 0.9],
    unit: 'share of the brim, or of the usual fill',
    basis: 'assumed',
    source: 'below this a cup looks short; ' + memory,
  },
} as const satisfies Record<string, Fact>;

export type FactName = keyof typeof FACTS;

/** What a vessel is made of: specific heat in J/(g K), conductivity of the wall in W/(m K). */
export const MATERIALS = {
  ceramic: {
    heat: 0.9,
    heatRange: [0.8, 1.07],
    conductivity: 1.5,
    source: 'fired clay bodies; from memory',
  },
  glass: {
    heat: 0.84,
    heatRange: [0.75, 0.84],
    conductivity: 1.0,
    source: 'soda-lime glass, engineering tables of specific heats',
  },
  steel: {
    heat: 0.5,
    heatRange: [0.46, 0.5],
    conductivity: 15,
    source: 'stainless steel; from memory',
  },
  paper: {
    heat: 1.34,
    heatRange: [1.3, 1.4],
    conductivity: 0.1,
    source: 'paper board; from memory',
  },
} as const;

export type Material = keyof typeof MATERIALS;

/** Thermal resistance of the gap of a double wall, m² K/W: still air of about 8 mm with radiation; from memory. */
export const DOUBLE_WALL_GAP = 0.15;
