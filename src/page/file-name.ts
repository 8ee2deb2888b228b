/** What a file that is saved is called: the house and the day. */

const LONGEST = 50;

/** "Tern & Tide" on 28 November 2026 → tern-tide-2026-11-28 */
export function stemOf(house: string, now: Date = new Date()): string {
  const slug = house
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  const two = (number: number): string => String(number).padStart(2, '0');
  const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${slug === '' ? 'letter' : slug}-${day}`;
}
