/** A picture taken out of its page. */

/**
 * A picture as a file of its own: with a light ground, so that it can be read anywhere.
 * @param svg as drawn, or as a page gives it back (`outerHTML` names no-break spaces, which XML does not know)
 */
export function standaloneSvg(svg: string, ground = '#FFFFFF', ink = '#1F2328'): string {
  const opened = svg
    .replaceAll('&nbsp;', '\u00A0')
    .replace(/^<svg /, `<svg color="${ink}" `)
    .replace(/^(<svg [^>]*>)/, `$1<rect width="100%" height="100%" fill="${ground}"/>`);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${opened}\n`;
}
