// The licences of what is bundled into dist/: they ask to go along with it.
import { readFileSync, readdirSync } from 'node:fs';

/** Every package that the files of a bundle come from, under the text of its licence. @param root with a slash at its end */
export function bundledLicences(root, inputs) {
  const folders = new Set(
    inputs.flatMap((path) => path.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/)?.[0] ?? []),
  );
  const byText = new Map();
  for (const folder of [...folders].sort()) {
    const { name, version, license } = JSON.parse(
      readFileSync(`${root}${folder}/package.json`, 'utf8'),
    );
    const file = readdirSync(`${root}${folder}`).find((one) => /^(licen[cs]e|copying)/i.test(one));
    if (file === undefined && license === undefined)
      throw new Error(`${name} names no licence, so it cannot be bundled`);
    const text = file === undefined ? '' : readFileSync(`${root}${folder}/${file}`, 'utf8').trim();
    byText.set(text, [
      ...(byText.get(text) ?? []),
      `${name} ${version} (${license ?? 'see below'})`,
    ]);
  }
  return [...byText]
    .map(([text, names]) => `${names.join('\n')}\n\n${text}\n`)
    .join(`\n${'-'.repeat(72)}\n\n`);
}
