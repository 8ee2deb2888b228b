/** Numbers as people type them into the boxes of the first view, as changes of the scenario or a sentence on what is wrong. */
import * as english from '../../tell/english.js';
import type { Edit } from '../../scenario/edit.js';

type Taken = { readonly edits: readonly Edit[] } | { readonly wrong: string };

const MOST_MACHINES = 12;
const MACHINES = ['washing', 'machines'] as const;

/** What may stand behind a number: 7am or £14 is none, and 2 h are not 2 min. */
export const UNITS = {
  guests: /^(?:guests?|people|persons?)?\s*(?:(?:an|per|\/)\s*h(?:our)?)?$/i,
  minutes: /^(?:m|mins?|minutes?)?$/i,
} as const;

/**
 * A number above 0, with the decimal mark of the place or a point; null: none.
 * @param unit what may be typed behind it
 */
export function readPositive(text: string, locale: string, unit: RegExp): number | null {
  const mark =
    new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === 'decimal')
      ?.value ?? '.';
  const [all, found] = /^\s*(\d[\d\s.,']*)/.exec(text) ?? [];
  if (found === undefined || !unit.test(text.slice(all!.length).trim())) return null;
  const plain = found.replace(/[\s']/g, '');
  const number = Number(
    mark === ',' && plain.includes(',')
      ? plain.replaceAll('.', '').replace(',', '.')
      : plain.replaceAll(',', ''),
  );
  return Number.isFinite(number) && number > 0 ? number : null;
}

/** "95", "95 %", "95%", "0.95" and "0,95" are all the same share; 0 % and 100 % cannot be had. */
export function readLevel(text: string): Taken {
  const found = /^\s*(\d{1,3}(?:[.,]\d+)?)\s*%?\s*$/.exec(text)?.[1];
  if (found === undefined) return { wrong: english.page.levelWrong };
  const number = Number(found.replace(',', '.'));
  const percent = number < 1 && !text.includes('%') ? number * 100 : number;
  if (percent < 1 || percent > 99.99) return { wrong: english.page.levelWrong };
  return {
    edits: [{ kind: 'set', path: ['level'], value: `${Number(percent.toFixed(4))} %` }],
  };
}

/** So many machines: the last is copied, or the last ones go. */
export function readMachines(text: string, now: readonly unknown[]): Taken {
  const wanted = Number(text.trim());
  if (!/^\d{1,3}$/.test(text.trim()) || wanted < 1 || wanted > MOST_MACHINES)
    return { wrong: english.page.machinesWrong(String(MOST_MACHINES)) };
  return {
    edits: Array.from({ length: Math.abs(wanted - now.length) }, (_, index): Edit =>
      wanted > now.length
        ? { kind: 'add', path: [...MACHINES, now.length + index], value: now.at(-1) }
        : { kind: 'remove', path: [...MACHINES, now.length - 1 - index] },
    ),
  };
}
