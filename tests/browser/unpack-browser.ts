/**
 * The browser that comes with `npm ci`, unpacked to a folder of its own. It brings the libraries and a
 * typeface that a bare machine lacks.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Unpacked {
  readonly executablePath: string;
  /** What the browser must find in its environment. */
  readonly env: Readonly<Record<string, string>>;
  /** Everything lies in here; to be removed when done. */
  readonly folder: string;
}

/** @throws Error where the package is missing or will not unpack */
export async function unpackBrowser(): Promise<Unpacked> {
  const folder = mkdtempSync(join(tmpdir(), 'cuptide-browser-'));
  const before = { ...process.env };
  try {
    // The package asks for these before it unpacks, and changes the environment of whoever imports it.
    process.env['TMPDIR'] = folder;
    process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x';
    const { default: packed } = await import('@sparticuz/chromium');
    const executablePath = await packed.executablePath();
    writeFileSync(
      join(folder, 'fonts.conf'),
      `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><include ignore_missing="yes">/etc/fonts/fonts.conf</include><dir>${join(folder, 'fonts')}</dir><cachedir>${join(folder, 'font-cache')}</cachedir></fontconfig>\n`,
    );
    const libraries = [
      join(folder, 'al2023/lib'),
      ...(before['LD_LIBRARY_PATH'] ?? '').split(':'),
    ].filter((path) => path !== '');
    return {
      executablePath,
      folder,
      env: {
        LD_LIBRARY_PATH: libraries.join(':'),
        FONTCONFIG_FILE: join(folder, 'fonts.conf'),
        HOME: folder,
        TMPDIR: folder,
      },
    };
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  } finally {
    for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
    Object.assign(process.env, before);
  }
}
