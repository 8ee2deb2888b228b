/** Words of the letter (the HTML report) around the answer. */
export const letterWords = {
  suitHead: 'Cups, drinks and guests',
  heading: (name: string): string => `Cups and glasses for ${name}`,
  runningHead: (name: string): string => `Cups and glasses for ${name}`,
  page: (page: string, pages: string): readonly string[] => ['Page ', page, ' of ', pages],
  inAll: 'in all',
  picturesHead: 'Why',
  tableBehind: 'The figures behind this chart',
  inputsHead: 'What this is based on',
  inputsIntro: (assumed: string, all: string): string =>
    `${assumed} of ${all} inputs ${assumed === '1' ? 'is' : 'are'} assumed, not measured, and listed first: measure what you can before you order.`,
  basisLine: (measured: string, all: string, assumed: string): string =>
    `Of the ${all} inputs that this answer uses, ${measured} ${measured === '1' ? 'is' : 'are'} measured and ${assumed} assumed.`,
  basisKey: (inputs: string): string =>
    `Assumed among those that matter most: ${inputs}. Measure them before you order.`,
  inputsCaption: 'Inputs, assumed ones first',
  input: 'Input',
  value: 'Value',
  range: 'Plausible range',
  source: 'Source',
  sources: 'Sources',
  allInputs: (count: string): string => `All ${count} inputs, with where each comes from`,
  otherInputs: (count: string, one: boolean): string =>
    `${count} more ${one ? 'input' : 'inputs'}, which this letter does not use`,
  otherInputsCaption: 'Inputs of other questions',
  basis: {
    assumed: 'Assumed',
    practice: 'Common practice',
    published: 'Published',
    measured: 'Measured',
  },
  origin: { file: 'from your file', default: 'default' },
  cautionsHead: 'Take care',
  /** Names of all cautions in a list. */
  cautionsFolded: (list: string): string => `Read before the first busy day: ${list}`,
  methodHead: 'How this was worked out, and how far to trust it',
  method: [
    'Each simulated day is different: parties of guests arrive at random, and some days are busier than others. The simulation follows every cup, glass, saucer and spoon from the shelf to the table, the bench, the rack, the dishwasher and back. A day is safe if nothing ran out.',
    'The stock is the cheapest that meets the service level you asked for: the share of days on which nothing runs out. It is chosen on one set of days and tested on another that played no part in the choice. The share reported here is that of the second set, with its interval.',
    'The interval covers random variation only. It does not cover wrong inputs: if guests stay longer or the dishwasher is slower than stated here, the stock will be too small, however narrow the interval.',
  ],
  methodListed:
    'The days came from your file and were not simulated at random. The stock is right for them; other days may need more.',
  informs: 'This letter helps you decide what to buy; it is not a guarantee.',
  colophon: (version: string, seed: string): string =>
    `Made by cuptide ${version}, seed ${seed}. The same file and seed give the same letter; cuptide verify works every number of it out again. Set in Literata and Inter, typefaces under the SIL Open Font License 1.1.`,
};
