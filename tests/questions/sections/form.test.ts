/** Every section of every example scenario: well-formed, readable by anybody, nothing that runs, and no name that gets out of its place. */
import { describe, expect, it } from 'vitest';
import {
  answersOf,
  readText,
  scenarioNames,
  sectionsOf,
  type Answered,
  type SectionName,
} from './answers.js';

const names: readonly SectionName[] = ['alternatives', 'map', 'moves', 'racks', 'order', 'suit'];
const tagsOf = (html: string): string[] => html.match(/<\/?[a-z!][^>]*>/gi) ?? [];
const shapeOf = (html: string): string =>
  tagsOf(html)
    .map((tag) => /^<\/?[a-z0-9!]+/i.exec(tag)![0])
    .join(' ');
const ALLOWED =
  /^<\/?(h2|h3|p|ul|li|div|table|caption|thead|tbody|tr|th|td|bdi|details|summary|section|figure|svg|g|path|line|rect|circle|text|tspan|title|desc|defs|clipPath)[\s>/]/;

function expectGoodForm(html: string): void {
  const open: string[] = [];
  for (const tag of tagsOf(html)) {
    expect(tag).toMatch(ALLOWED);
    expect(tag.replace(/"[^"]*"/g, '""')).not.toMatch(/\s(?:on\w+|href|src|style)=/i);
    const element = /^<\/?([a-z0-9]+)/i.exec(tag)![1]!;
    if (tag.endsWith('/>')) continue;
    if (tag.startsWith('</')) expect(open.pop()).toBe(element);
    else open.push(element);
  }
  expect(open).toEqual([]);
  const levels = [...html.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level));
  expect(levels[0]).toBe(2);
  for (let i = 1; i < levels.length; i += 1)
    expect(levels[i]! - levels[i - 1]!).toBeLessThanOrEqual(1);
  for (const table of html.match(/<table[\s\S]*?<\/table>/g) ?? []) {
    expect(table).toMatch(/<caption>[^<]+<\/caption>/);
    const widths = (table.match(/<tr[\s\S]*?<\/tr>/g) ?? []).map(
      (row) => row.match(/<t[hd][ >]/g)!.length,
    );
    expect(new Set(widths).size).toBe(1);
  }
  for (const head of html.match(/<th[ >][^>]*>/g) ?? []) expect(head).toMatch(/scope="(col|row)"/);
  for (const head of html.match(/<th[^>]*scope="col"[^>]*>.*?<\/th>/g) ?? [])
    expect(readText(head).trim()).not.toBe('');
  const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(html).not.toMatch(/<(ul|p|h2|h3|figure|summary)[^>]*><\/\1>/);
  expect(readText(html)).not.toMatch(/\b(?:NaN|undefined|Infinity|null|\[object)\b/);
  expect(html).not.toMatch(/(?!\n)\p{Cc}|[\p{Cs}\u202A-\u202E\u2066-\u2069]/u);
}

/** The great hall has the sections of the others, and takes as long as all of them. */
describe.each(scenarioNames.filter((name) => !name.includes('great-hall')).map((name) => [name]))(
  '%s',
  (name) => {
    it('has every section in good form, with pictures, in metric and in US units', async () => {
      const answered = await answersOf(name);
      const sections = await sectionsOf(answered);
      for (const section of names) expectGoodForm(sections[section]);
      const us = await sectionsOf(
        { ...answered, context: { ...answered.context, units: 'us' } },
        false,
      );
      for (const section of names) expectGoodForm(us[section]);
      expect(us.racks).toMatch(/\d\u00A0in\b/);
      expect(readText(us.racks).replaceAll(/\(.*?\)/g, '')).not.toMatch(/Loaded.*\d kg.*Lift/);
    });

    it('gives the same bytes each time', async () => {
      expect(await sectionsOf(await answersOf(name), false)).toEqual(
        await sectionsOf(await answersOf(name), false),
      );
    });
  },
);

const hostile = [
  '</script><script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  `' onmouseover='alert(1)`,
  '</style></table></svg><b>',
  '\u202Eevil\u2066\u200F\u061C',
  '<!-- &lt;b&gt; ]]>',
  '\u0000\u001B[2J\n\n\t',
  'x'.repeat(10_000),
  '\u{1F600}'.repeat(5_000),
  '\uD800',
];
/** Fields that come from the scenario as somebody wrote them. */
const WRITTEN = new Set([
  'name',
  'scenario',
  'title',
  'supplierName',
  'note',
  'freightStep',
  'seed',
  'message',
  'lowValue',
  'highValue',
  'step',
  'changes',
  'rackCliff',
  'colour',
  'problems',
  'cautions',
  'source',
  'mind',
  'remedies',
  'scald',
]);

/** Every text that somebody wrote, and every text made with it, replaced. */
function renamed<V>(value: V, name: string, field = ''): V {
  if (typeof value === 'string') return (WRITTEN.has(field) ? name : value) as V;
  if (Array.isArray(value)) return value.map((part: unknown) => renamed(part, name, field)) as V;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [key, renamed(part, name, key)]),
  ) as V;
}

const named = ({ opened, context, answers }: Answered, name: string): Answered => ({
  opened,
  answers: renamed(answers, name),
  context: { ...context, ware: context.ware.map((ware) => ({ ...ware, name })) },
});

describe('a hostile name', () => {
  it.each(hostile.map((name, at) => [at, name] as const))(
    '%i stays text wherever it lands, and short',
    async (_, name) => {
      const answered = await answersOf(scenarioNames[0]!);
      const plain = await sectionsOf(named(answered, 'Plain'), false);
      const evil = await sectionsOf(named(answered, name), false);
      for (const section of names) {
        expect(shapeOf(evil[section])).toBe(shapeOf(plain[section]));
        expect(evil[section]).not.toMatch(/(?!\n)\p{Cc}|[\p{Cs}\u202A-\u202E\u2066-\u2069]/u);
        // A paragraph, an item or a cell is cut; so a section grows by no more than its number of them allows.
        for (const text of evil[section].match(/>[^<]+</g) ?? [])
          expect(readText(text).length).toBeLessThan(1300 * 2);
        expect(evil[section].length).toBeLessThan(plain[section].length + 160_000);
      }
    },
  );

  it.each([[hostile[0]!], [hostile[4]!], [hostile[7]!]])(
    'stays text in the pictures too',
    async (name) => {
      const evil = await sectionsOf(named(await answersOf(scenarioNames[0]!), name));
      for (const section of names) expectGoodForm(evil[section]);
    },
  );
});
