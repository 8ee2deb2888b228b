/** A scenario whose names try to break out of every place that they land in. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../cli/run.js';

/** Each would set `window.broken` if it ran. */
export const HOSTILE = {
  scenario: `</script><script>window.broken='scenario'</script><img src=x onerror="window.broken='image'">`,
  cup: `"'><svg onload=window.broken='svg'>\u202Egnp.exe`,
  glass: "=cmd|'/c calc'!A1",
  drink: '=HYPERLINK("file:///etc/passwd")',
  spoon: `${'long name '.repeat(1_000)}]]>--><!--`,
} as const;

/** The first example under other names, with few guests: every question is then worked out soon. */
export function hostileScenario(): string {
  const text = readFileSync(join(root, 'scenarios/1-commuter-bar.yaml'), 'utf8');
  const renamed = text
    .replace(
      '{ value: 64 / h, basis: measured, range: [58 / h, 70 / h]',
      '{ value: 12 / h, basis: measured, range: [10 / h, 14 / h]',
    )
    .replace('name: Tern & Tide', `name: ${JSON.stringify(HOSTILE.scenario)}`)
    .replace('name: Medium cup,', `name: ${JSON.stringify(HOSTILE.cup)},`)
    .replace('name: Flat white', `name: ${JSON.stringify(HOSTILE.drink)}`)
    .replace('name: Tumbler,', `name: ${JSON.stringify(HOSTILE.glass)},`)
    .replace('name: Teaspoon,', `name: ${JSON.stringify(HOSTILE.spoon)},`)
    .replace('source: "stopwatch, ten loads"', `source: ${JSON.stringify(HOSTILE.scenario)}`);
  if (
    renamed.split('window.broken').length !== 6 ||
    !renamed.includes('HYPERLINK') ||
    !renamed.includes('calc') ||
    !renamed.includes('value: 12 / h')
  )
    throw new Error('the first example has changed: not every name was replaced');
  return renamed;
}
