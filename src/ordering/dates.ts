/** Calendar dates as `YYYY-MM-DD`, reckoned in UTC so that no clock change moves a day. */

const DAY_MS = 86_400_000;

/** The date so many days after another; parts of a day are rounded up (a delivery is used the day after). */
export function addDays(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + Math.ceil(days) * DAY_MS)
    .toISOString()
    .slice(0, 10);
}

/** Days from one date to another; negative when the second is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);
}

/** Whether the text is a date that exists, written `YYYY-MM-DD`. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const at = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(at) && new Date(at).toISOString().slice(0, 10) === text;
}
