/**
 * A part of a study as a file: what it is of, a row a unit, and a digest of all before it. It holds no time, host or
 * process, so the same part has the same bytes wherever it was made.
 */
import { createHash } from 'node:crypto';

export interface PartHead {
  /** Digest of everything that the rows depend on. */
  readonly study: string;
  readonly version: string;
  /** From 1. */
  readonly part: number;
  readonly of: number;
}

export type ReadPart =
  | { readonly ok: true; readonly head: PartHead; readonly rows: readonly string[] }
  /** Cut short or damaged: to be made again. */
  | { readonly ok: false };

const NAME = /^part-(\d{6,})-of-(\d{6,})\.jsonl$/;

export const partName = (part: number, of: number): string =>
  `part-${String(part).padStart(6, '0')}-of-${String(of).padStart(6, '0')}.jsonl`;

export const isPartName = (name: string): boolean => NAME.test(name);

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** @param rows each a line of JSON */
export function partText(head: PartHead, rows: readonly string[]): string {
  const text = [JSON.stringify(head), ...rows].map((line) => `${line}\n`).join('');
  return `${text}${JSON.stringify({ sha256: sha256(text) })}\n`;
}

export function readPart(text: string): ReadPart {
  const end = text.lastIndexOf('\n', text.length - 2) + 1;
  const [before, last] = [text.slice(0, end), text.slice(end)];
  if (last !== `${JSON.stringify({ sha256: sha256(before) })}\n`) return { ok: false };
  const lines = before.split('\n');
  const head = headOf(lines[0] ?? '');
  return head === null ? { ok: false } : { ok: true, head, rows: lines.slice(1, -1) };
}

function headOf(line: string): PartHead | null {
  try {
    const { study, version, part, of } = JSON.parse(line) as Partial<PartHead>;
    return typeof study === 'string' &&
      typeof version === 'string' &&
      typeof part === 'number' &&
      typeof of === 'number'
      ? { study, version, part, of }
      : null;
  } catch {
    return null;
  }
}

/** Digest of a study: each text or file with its length before it, so that none can pass for the end of another. */
export function studyDigest(pieces: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const piece of pieces) {
    const bytes = typeof piece === 'string' ? new TextEncoder().encode(piece) : piece;
    hash.update(`${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex');
}
