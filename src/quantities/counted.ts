/** A count with its noun: "1 piece", "12 pieces". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
