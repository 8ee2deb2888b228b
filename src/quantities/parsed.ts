/** What reading a value as people write it comes to, and what messages say of it; without the schemas, so that what reads no file starts without them. */

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | {
      readonly ok: false;
      /** A clause that follows the value: "is a number without a unit where a duration is needed". */
      readonly rule: string;
      /** What to write instead. */
      readonly remedy: string;
      /** The input is not even of the right kind, so another form of the field may be meant. */
      readonly wrongKind?: boolean;
    };

export const good = <T>(value: T): Parsed<T> => ({ ok: true, value });
export const bad = (rule: string, remedy: string): Parsed<never> => ({ ok: false, rule, remedy });
export const wrongKind = (rule: string, remedy: string): Parsed<never> => ({
  ok: false,
  rule,
  remedy,
  wrongKind: true,
});

/** What kind of thing the input is, for messages. */
export function kindOf(input: unknown): string {
  if (input === null || input === undefined) return 'nothing';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'a group of fields';
  if (typeof input === 'number') return 'a number';
  if (typeof input === 'boolean') return 'yes or no';
  return 'text';
}

/** Drops the last binary digits that a change of unit may leave behind: 0.4 / min is 24 / h. */
export const clean = (value: number): number => Number(value.toPrecision(15));
