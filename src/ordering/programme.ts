/** An integer programme as text for the solver, row by row. */

export type Term = readonly [coefficient: number, variable: string];

/** Collects the parts of a programme and writes them in LP format; variables are 0 or more unless said. */
export class Programme {
  private readonly costs = new Map<string, number>();
  private readonly rows: string[] = [];
  private readonly choices = new Set<string>();
  private readonly wholes = new Set<string>();

  cost(coefficient: number, variable: string): void {
    this.costs.set(variable, (this.costs.get(variable) ?? 0) + coefficient);
  }

  row(terms: readonly Term[], relation: '<=' | '>=' | '=', right: number): void {
    this.rows.push(`${sum(terms)} ${relation} ${right}`);
  }

  choice(variable: string): void {
    this.choices.add(variable);
  }

  whole(variable: string): void {
    this.wholes.add(variable);
  }

  /** How many choices of yes or no there are: what makes it hard. */
  get choiceCount(): number {
    return this.choices.size;
  }

  /** @param whole false: choices may be shares and numbers parts of one, so that its least cost is a bound, quickly found */
  text(whole = true): string {
    const costs = [...this.costs].map(([variable, coefficient]): Term => [coefficient, variable]);
    return [
      'Minimize',
      ` cost: ${sum(costs)}`,
      'Subject To',
      ...this.rows.map((line, index) => ` r${index}: ${line}`),
      ...(whole
        ? [
            'Binary',
            ...[...this.choices].map((name) => ` ${name}`),
            'General',
            ...[...this.wholes].map((name) => ` ${name}`),
          ]
        : ['Bounds', ...[...this.choices].map((name) => ` 0 <= ${name} <= 1`)]),
      'End',
    ].join('\n');
  }
}

/** Terms as LP format writes them, a few a line since lines are limited. */
export function sum(terms: readonly Term[]): string {
  const kept = terms.filter(([coefficient]) => coefficient !== 0);
  const written = kept.map(
    ([coefficient, variable]) =>
      `${coefficient < 0 ? '-' : '+'} ${decimal(Math.abs(coefficient))} ${variable}`,
  );
  return (
    written
      .reduce((text, term, index) => text + (index % 8 === 7 ? '\n  ' : ' ') + term, '')
      .trim() || `0 ${terms[0]?.[1] ?? 'x'}`
  );
}

/** A number without an exponent, which the format does not know. */
const decimal = (value: number): string =>
  Number.isInteger(value) ? value.toFixed(0) : value.toFixed(9);
