/**
 * A value on one line, as a scenario file holds it: `{ lognormal: { mean: 42 min, sd: 18 min } }`; or
 * as JSON. And back: such a line, typed by somebody, as a value.
 */
import { isAlias, isNode, parse, parseDocument, visit } from 'yaml';
import { problemAt, type Flaw } from './problems.js';
import type { Path } from './path.js';
import { isGroup } from './tree.js';

export type Style = 'yaml' | 'json';

/** Whether a word can go without quotes wherever it stands: it reads back as itself. */
function isPlain(word: string): boolean {
  if (
    !/^[\p{L}\p{N}.][^:#,[\]{}&*!|>'"\\\p{C}\u2028\u2029\uFEFF]*$/u.test(word) ||
    word.trim() !== word
  )
    return false;
  try {
    const back: unknown = parse(`[${word}]`);
    return Array.isArray(back) && back.length === 1 && back[0] === word;
  } catch {
    return false;
  }
}

const singleQuoted = (word: string): string => `'${word.replaceAll("'", "''")}'`;
const isPrintable = (word: string): boolean => !/[\p{C}\u2028\u2029]/u.test(word);

function wordText(word: string, style: Style, quote?: 'double' | 'single'): string {
  if (style === 'yaml' && quote === 'single' && isPrintable(word)) return singleQuoted(word);
  return style === 'yaml' && quote === undefined && isPlain(word)
    ? word
    : JSON.stringify(word)
        .replaceAll('\u007F', '\\u007f')
        .replace(
          /[\u2028\u2029\uFEFF\u0085]/g,
          (odd) => `\\u${odd.charCodeAt(0).toString(16).padStart(4, '0')}`,
        );
}

/** A name before a colon. Whole numbers stay bare: they read back as the same name. */
export const keyText = (key: string, style: Style): string =>
  style === 'yaml' && /^\d{1,9}$/.test(key) ? key : wordText(key, style);

/**
 * A value on one line.
 * @param quote quotes that a word is written in although it may need none
 */
export function flowText(
  value: unknown,
  style: Style = 'yaml',
  quote?: 'double' | 'single',
): string {
  if (typeof value === 'string') return wordText(value, style, quote);
  if (Array.isArray(value))
    return `[${value.map((item: unknown) => flowText(item, style)).join(', ')}]`;
  if (isGroup(value)) {
    const entries = Object.entries(value).filter(([, item]) => item !== undefined);
    return entries.length === 0
      ? '{}'
      : `{ ${entries.map(([key, item]) => `${keyText(key, style)}: ${flowText(item, style)}`).join(', ')} }`;
  }
  if (typeof value === 'number' && !Number.isFinite(value))
    return style === 'json' ? 'null' : Number.isNaN(value) ? '.nan' : value > 0 ? '.inf' : '-.inf';
  return value === undefined || value === null ? 'null' : JSON.stringify(value);
}

/** A line as somebody types it, as a value; or why it cannot be read. */
export function readFlow(
  text: string,
  path: Path,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly flaw: Flaw } {
  const refuse = (rule: string): { ok: false; flaw: Flaw } => ({
    ok: false,
    flaw: problemAt(
      path,
      text,
      rule,
      'write a value such as "42 min", [a, b] or { mean: 42 min, sd: 18 min }',
    ),
  });
  if (text.length > 20_000) return refuse('is too long for one value');
  const document = parseDocument(text, {
    prettyErrors: false,
    version: '1.2',
    schema: 'core',
    merge: false,
    logLevel: 'error',
  });
  if (document.errors.length > 0)
    return refuse(
      `cannot be read (${document.errors[0]!.message.split('\n')[0]!
        .replace(/\s+at line.*$/, '')
        .trim()})`,
    );
  let odd = false;
  visit(document, {
    Node(_, node) {
      if (isAlias(node) || (isNode(node) && (node as { anchor?: string }).anchor !== undefined))
        odd = true;
    },
  });
  return odd
    ? refuse('contains an anchor or an alias, which a value here cannot')
    : { ok: true, value: document.toJS() as unknown };
}
