/** Every section of every example scenario: well-formed, readable by anybody, nothing that runs, and no name that gets out of its place. */
import { beforeAll, describe, expect, it } from 'vitest';
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

/** Runs, or brings something in. */
const ACTIVE = /\s(?:on\w+|href|src|style)=/i;

/** Tags that close what is not open, and what is left open at the end. */
function unmatched(tags: readonly string[]): string[] {
  const open: string[] = [];
  const wrong: string[] = [];
  for (const tag of tags) {
    const element = /^<\/?([a-z0-9]+)/i.exec(tag)![1]!;
    if (tag.endsWith('/>')) continue;
    if (!tag.startsWith('</')) open.push(element);
    else if (open.pop() !== element) wrong.push(tag);
  }
  return [...wrong, ...open];
}

function expectGoodForm(html: string): void {
  // One expectation for all tags: there are some hundred thousand.
  const tags = tagsOf(html);
  expect(tags.filter((tag) => !ALLOWED.test(tag))).toEqual([]);
  expect(tags.filter((tag) => ACTIVE.test(tag.replace(/"[^"]*"/g, '""')))).toEqual([]);
  expect(unmatched(tags)).toEqual([]);
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
  const heads = html.match(/<th[ >][^>]*>/g) ?? [];
  expect(heads.filter((head) => !/scope="(col|row)"/.test(head))).toEqual([]);
  const columns = html.match(/<th[^>]*scope="col"[^>]*>.*?<\/th>/g) ?? [];
  expect(columns.filter((head) => readText(head).trim() === '')).toEqual([]);
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
  // Freight, tax and the other costs of an order have names of ours.
  if (field === 'costs' && 'landed' in value) return value;
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
  let plain: Record<SectionName, string>;
  beforeAll(async () => {
    plain = await sectionsOf(named(await answersOf(scenarioNames[0]!), 'Plain'), false);
  });

  it.each(hostile.map((name, at) => [at, name] as const))(
    '%i stays text wherever it lands, and short',
    async (_, name) => {
      const evil = await sectionsOf(named(await answersOf(scenarioNames[0]!), name), false);
      for (const section of names) {
        expect(shapeOf(evil[section])).toBe(shapeOf(plain[section]));
        expect(evil[section]).not.toMatch(/(?!\n)\p{Cc}|[\p{Cs}\u202A-\u202E\u2066-\u2069]/u);
        // A paragraph, an item or a cell is cut; so a section grows by no more than its number of them allows.
        const texts = (evil[section].match(/>[^<]+</g) ?? []).map((text) => readText(text).length);
        expect(Math.max(...texts)).toBeLessThan(1300 * 2);
        expect(evil[section].length).toBeLessThan(plain[section].length + 160_000);
      }
    },
  );

  // One after the other in one name, as the pictures are what takes the time.
  it('stays text in the pictures too', async () => {
    const name = [hostile[0]!, hostile[4]!, hostile[7]!].join(' ');
    const evil = await sectionsOf(named(await answersOf(scenarioNames[0]!), name));
    for (const section of names) expectGoodForm(evil[section]);
  });
});
