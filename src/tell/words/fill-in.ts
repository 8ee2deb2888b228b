/** Words around tables that the letter's reader fills in or hands over. */
export const fillInWords = {
  file: 'A filled sheet (CSV or XLSX): choose it or drop it here, and its numbers go into the boxes',
  taken: (name: string): string =>
    `The boxes now hold what “${name}” says. Nothing is changed until you read the sheet.`,
  tooLarge: 'This file is larger than 1 MB, too large for a sheet.',
  row: (count: string): string => `Row ${count}`,
  cell: (row: string, column: string): string => `${row}, ${column}`,
  more: 'One more row',
  read: 'Read the sheet',
  save: 'Save the sheet (CSV)',
  saveFile: 'sheet.csv',
  nothing: 'Nothing is filled in yet: fill in at least one part.',
  wrong: (count: string, one: boolean): string =>
    one
      ? 'One mistake; it stands at its box. Nothing was changed.'
      : `${count} mistakes; they stand at their boxes. Nothing was changed.`,
  line: (line: string): string => `Line ${line}`,
  table: (name: string): string => `Table “${name}” of this scenario (CSV)`,
  tableThere: 'It is in this letter. Choose a file to put another in its place.',
  tableMissing: 'It is not in this letter yet.',
};
