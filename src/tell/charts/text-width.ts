/**
 * Width of text in charts, without a browser: advances of the printable ASCII characters, measured in
 * thousandths of the type size on two free sans-serif fonts (one with the widths of the usual office
 * sans, one wider); the wider is taken, so that labels have room in either.
 */
const advances = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636,
  636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 556, 1015, 684, 686, 722, 770, 667,
  611, 778, 752, 295, 500, 667, 557, 863, 748, 787, 667, 787, 722, 667, 611, 732, 684, 989, 685,
  667, 685, 390, 337, 390, 838, 556, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579,
  278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
];
const OTHER = 640;
const FULL_WIDTH = 1000;
const BOLD = 1.1;

/** Width in pixels of one line of `text` at `size` pixels. */
export function textWidth(text: string, size: number, bold = false): number {
  let thousandths = 0;
  for (const sign of text) {
    const code = sign === '\u00A0' ? 32 : sign.codePointAt(0)!;
    thousandths +=
      advances[code - 32] ??
      (code >= 0x1100 &&
      code !== 0x2013 &&
      !(code >= 0x2000 && code < 0x2e80 && code !== 0x2014 && code !== 0x2026)
        ? FULL_WIDTH
        : code >= 0x300 && code < 0x370
          ? 0
          : OTHER);
  }
  return (thousandths * size * (bold ? BOLD : 1)) / 1000;
}

/** `text` broken between words into lines of at most `width` pixels. */
export function breakLines(text: string, width: number, size: number, bold = false): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, size, bold) <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** The same number of lines as `breakLines` would give, but of about equal length: no word stands alone. */
export function evenLines(text: string, width: number, size: number, bold = false): string[] {
  const wanted = breakLines(text, width, size, bold).length;
  let narrow = Math.floor(width / 2);
  while (narrow < width && breakLines(text, narrow, size, bold).length > wanted) narrow += 4;
  return breakLines(text, Math.min(narrow, width), size, bold);
}
