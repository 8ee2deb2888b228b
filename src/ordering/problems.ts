/** What is wrong with an order's input, in the words of its sheets. */
import type { Fault, Path } from '../quantities/flaw.js';

export function problem(path: Path, value: unknown, rule: string, remedy: string): Fault {
  const shown = typeof value === 'string' ? `"${value}"` : String(value);
  return { path, value, rule, remedy, message: `${path.join('.')}: ${shown} ${rule}; ${remedy}` };
}

/** A ware that no supplier has. */
export const unsold = ({ ware }: { readonly ware: string }): Fault =>
  problem(
    ['supply', 'suppliers'],
    ware,
    'is not sold by any supplier',
    'add a quote for it, or leave it out of the order',
  );
