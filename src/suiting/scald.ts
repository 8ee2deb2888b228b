/**
 * How long hot liquid takes to burn skin: cautions only, never a permission.
 *
 * After Moritz & Henriques, Am J Pathol 1947;23:695, in seconds until a second-degree and a third-degree
 * burn. Children, the old and thin skin burn sooner. Local consumer and workplace law decides what may be
 * served and how it is to be warned of.
 */
export const SCALDS: readonly {
  readonly tempC: number;
  readonly secondDegreeS: number;
  readonly thirdDegreeS: number;
}[] = [
  { tempC: 45, secondDegreeS: 7200, thirdDegreeS: 10_800 },
  { tempC: 47, secondDegreeS: 1200, thirdDegreeS: 2700 },
  { tempC: 48, secondDegreeS: 900, thirdDegreeS: 1200 },
  { tempC: 49, secondDegreeS: 480, thirdDegreeS: 600 },
  { tempC: 51, secondDegreeS: 120, thirdDegreeS: 252 },
  { tempC: 55, secondDegreeS: 17, thirdDegreeS: 30 },
  { tempC: 60, secondDegreeS: 3, thirdDegreeS: 5 },
];

export const SCALD_LAW = 'local consumer and workplace law decides how hot a drink may be served';

/** The row that a caution quotes: the hottest not above the temperature (°C); null: cooler than the table. */
export function scaldAt(tempC: number): (typeof SCALDS)[number] | null {
  return SCALDS.findLast((row) => row.tempC <= tempC) ?? null;
}

/** The caution in words. Between two rows the burn is sooner than the row quoted says, so it says "or less". */
export function scaldCaution(tempC: number): string | null {
  const row = scaldAt(tempC);
  if (row === null) return null;
  const time =
    row.secondDegreeS >= 120
      ? `${Math.round(row.secondDegreeS / 60)} min`
      : `${row.secondDegreeS} s`;
  return `at ${Math.round(tempC)} °C skin burns in ${time} or less; ${SCALD_LAW}`;
}
