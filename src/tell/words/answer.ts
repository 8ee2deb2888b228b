/** Words that several answers share: pieces by name, ranges, an empty cell. */

const plurals: Readonly<Record<string, string>> = {
  cup: 'cups',
  mug: 'mugs',
  glass: 'glasses',
  tumbler: 'tumblers',
  saucer: 'saucers',
  spoon: 'spoons',
  teaspoon: 'teaspoons',
  plate: 'plates',
  bowl: 'bowls',
  jug: 'jugs',
  beaker: 'beakers',
  goblet: 'goblets',
  tray: 'trays',
  bottle: 'bottles',
  fork: 'forks',
};
const plainAdjectives = new Set([
  'small',
  'medium',
  'large',
  'espresso',
  'straight',
  'tapered',
  'tall',
  'short',
  'tea',
  'coffee',
  'water',
  'latte',
  'cappuccino',
  'dessert',
  'double',
  'single',
]);

/** "48 medium cups"; a name whose plural is not known stays as it is: "48 × Name". */
function pieces(count: string, name: string, one: boolean): string {
  const parts = name.split(' ');
  const last = parts.at(-1)!.toLowerCase();
  const first = parts[0]!.toLowerCase();
  const plural = Object.hasOwn(plurals, last) ? plurals[last] : undefined;
  if (plural === undefined) return `${count} × ${name}`;
  const head = parts.slice(0, -1);
  if (head.length === 0 || plainAdjectives.has(first)) head[0] = head.length === 0 ? '' : first;
  return `${count} ${[...head.filter((part) => part !== ''), one ? last : plural].join(' ')}`;
}

export const answerWords = {
  pieces,
  to: (low: string, high: string): string => `${low} to ${high}`,
  none: '–',
};
