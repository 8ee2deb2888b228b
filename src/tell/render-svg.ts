/**
 * Charts to SVG text without a browser. The libraries are large, so they are loaded when first needed.
 * Expressions are read as data and interpreted, everywhere, so that the same picture is drawn where a
 * content policy forbids code made from text.
 */
import type { LoggerInterface } from 'vega';
import { escapeHtml } from './escape-html.js';
import { titleOf, withoutTitle, type ChartSpec } from './charts/style.js';
import { withTitles } from './charts/svg-titles.js';
import { textWidth } from './charts/text-width.js';

export { standaloneSvg } from './charts/standalone-svg.js';

export interface RenderOptions {
  /** Leave the title out of the picture, where a heading says it. Default false. */
  readonly bare?: boolean;
  /** Put before the ids inside, so that several pictures can stand on one page. Default 'chart'. */
  readonly idPrefix?: string;
  /** Reported what the compiler warns of. Default: nobody. */
  readonly onWarning?: (message: string) => void;
}

interface TextItem {
  readonly fontSize?: number;
  readonly fontWeight?: string | number;
}

interface TextMetrics {
  width: (item: TextItem, text: unknown) => number;
}

const isTextMetrics = (value: unknown): value is TextMetrics =>
  typeof value === 'object' && value !== null && 'width' in value;

/** Vega's own estimate gives every letter the same, too great width; ours goes by letter. */
function useOurWidths(vega: object): void {
  const metrics: unknown = Reflect.get(vega, 'textMetrics');
  if (!isTextMetrics(metrics)) return;
  metrics.width = (item, text) => {
    const bold = item.fontWeight === 'bold' || Number(item.fontWeight ?? 400) >= 600;
    return text === null || text === undefined
      ? 0
      : textWidth(String(text).trim(), item.fontSize ?? 11, bold);
  };
}

/**
 * Renders a chart to one SVG element: text and lines take the colour of the text around it
 * (`currentColor`), marks that tell carry a `title`, ids are numbered by appearance, so the same chart
 * gives the same bytes.
 * @throws Error if the specification cannot be compiled
 */
export async function renderSvg(spec: ChartSpec, options: RenderOptions = {}): Promise<string> {
  const [vega, lite, { expressionInterpreter }] = await Promise.all([
    import('vega'),
    import('vega-lite'),
    import('vega-interpreter'),
  ]);
  useOurWidths(vega);
  const logger = warningsOnly(options.onWarning ?? (() => {}));
  const compiled = lite.compile(options.bare === true ? withoutTitle(spec) : spec, { logger }).spec;
  const view = new vega.View(vega.parse(compiled, undefined, { ast: true }), {
    renderer: 'none',
    logger,
    expr: expressionInterpreter,
  });
  const svg = await view.toSVG();
  view.finalize();
  return labelled(withTitles(numberedIds(inTenths(svg), options.idPrefix ?? 'chart')), spec);
}

/** Outlines to a tenth of a pixel: nobody sees more, and a long outline weighs a quarter less. */
const inTenths = (svg: string): string =>
  svg.replace(/ d="[^"]*"/g, (outline) =>
    outline.replace(/-?\d+\.\d+/g, (figure) => String(Number(Number(figure).toFixed(1)))),
  );

/** Passes on warnings and errors, and nothing else. */
function warningsOnly(tell: (message: string) => void): LoggerInterface {
  const say = (...messages: readonly unknown[]): LoggerInterface => {
    tell(messages.map(String).join(' '));
    return logger;
  };
  const logger: LoggerInterface = {
    level: (value) => (value === undefined ? 0 : logger),
    error: say,
    warn: say,
    info: () => logger,
    debug: () => logger,
  };
  return logger;
}

/** Ids of clip paths and gradients count up over a program's life; number them within the picture instead. */
function numberedIds(svg: string, prefix: string): string {
  const seen = new Map<string, string>();
  const renamed = (id: string): string => {
    const known = seen.get(id) ?? `${prefix}-${seen.size + 1}`;
    seen.set(id, known);
    return known;
  };
  return svg.replace(
    /(\bid="|url\(#)((?:clip|gradient_)\d+)/g,
    (_, before: string, id: string) => before + renamed(id),
  );
}

function labelled(svg: string, spec: ChartSpec): string {
  const words = [titleOf(spec), typeof spec.description === 'string' ? spec.description : '']
    .filter((part) => part !== '')
    .join('. ');
  return svg.replace(/^<svg /, `<svg role="img" aria-label="${escapeHtml(words)}" `);
}
