/** The floor of a rack seen from above, in millimetres of its clear inside; y points up. */
import { square } from '../../elementary/powers.js';
import { usableOf, type Rack } from '../../racking/rack.js';
import { mm } from './piece-path.js';

/** Compartments, or the mesh of a basket, faint. @param weight of the lines, against those of a drawing as wide as a page */
export function floor(rack: Rack, weight = 1): string[] {
  const { x, y } = usableOf(rack);
  if (rack.kind === 'grid') {
    const [dx, dy] = [x / rack.cells, y / rack.cells];
    return Array.from({ length: square(rack.cells) }, (_, i) => {
      const [cx, cy] = [((i % rack.cells) + 0.5) * dx, (Math.floor(i / rack.cells) + 0.5) * dy];
      const half = rack.openingMm / 2;
      return `<rect x="${mm(cx - half)}" y="${mm(cy - half)}" width="${mm(2 * half)}" height="${mm(2 * half)}" rx="3" stroke="currentColor" stroke-width="${mm(0.8 * weight)}" stroke-opacity="0.45"/>`;
    });
  }
  if (rack.kind === 'basket') {
    const line = (at: number): string =>
      `<path d="M${mm((at * x) / 16)} 0V${mm(y)}M0 ${mm((at * y) / 16)}H${mm(x)}" stroke="currentColor" stroke-width="${mm(0.5 * weight)}" stroke-opacity="0.25"/>`;
    return Array.from({ length: 15 }, (_, i) => line(i + 1));
  }
  return [];
}
