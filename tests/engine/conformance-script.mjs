// The digests as one script for any engine: it sets globalThis.conformance to a promise of them.
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export async function conformanceScript() {
  const { outputFiles } = await build({
    stdin: {
      contents: "import { digests } from './conformance.ts'; globalThis.conformance = digests();",
      resolveDir: fileURLToPath(new URL('.', import.meta.url)),
    },
    bundle: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    legalComments: 'none',
    write: false,
  });
  return outputFiles[0].text;
}
