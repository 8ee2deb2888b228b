/** The small picture of a site: pieces off the shelf through the rush, of the item that is scarcest on a tight day. */
import type { SiteAnswer } from './site-answer.js';

const [WIDTH, HEIGHT] = [120, 28];
const MOST_POINTS = 48;

/** An inline SVG, shapes alone; '' where nothing was watched. */
export function smallPicture({ course, pieces }: SiteAnswer, title: string): string {
  if (course === null || course.high.length < 2) return '';
  const stock = pieces[course.ware] ?? 0;
  const top = Math.max(1, stock, ...course.high);
  const every = Math.max(1, Math.ceil(course.high.length / MOST_POINTS));
  const points = (values: readonly number[]): string =>
    values
      .flatMap((value, at) =>
        at % every === 0 ? [`${x(at, values.length)},${y(value, top)}`] : [],
      )
      .join(' ');
  const level = y(stock, top);
  return `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-label="${title}"><polygon class="band" points="0,${HEIGHT} ${points(course.high)} ${WIDTH},${HEIGHT}"/><polyline class="mid" points="${points(course.median)}"/><path class="stock" d="M0 ${level}H${WIDTH}"/></svg>`;
}

const x = (at: number, count: number): string => ((at * WIDTH) / (count - 1)).toFixed(0);
const y = (value: number, top: number): string =>
  (HEIGHT - 1 - (value / top) * (HEIGHT - 3)).toFixed(1);
