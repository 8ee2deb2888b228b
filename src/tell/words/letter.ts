/** Words of the letter (the HTML report) around the answer. */
export const letterWords = {
  suitHead: 'Vessel, drink and guest',
  heading: (name: string): string => `Ware for ${name}`,
  runningHead: (name: string): string => `Ware for ${name}`,
  page: (page: string, pages: string): readonly string[] => ['Page ', page, ' of ', pages],
  inAll: 'in all',
  picturesHead: 'Why',
  tableBehind: 'The figures behind this picture',
  inputsHead: 'What this rests on',
  inputsIntro: (assumed: string, all: string): string =>
    `${assumed} of ${all} inputs are assumed, not measured. They come first: measure those that you can before ordering.`,
  inputsCaption: 'Inputs, the assumed first',
  input: 'Input',
  value: 'Value',
  range: 'Plausible range',
  source: 'Source',
  sources: 'Sources',
  otherInputs: (count: string): string => `${count} more inputs, which this letter does not use`,
  otherInputsCaption: 'Inputs of other questions',
  basis: {
    assumed: 'Assumed',
    practice: 'Common practice',
    published: 'Published',
    measured: 'Measured',
  },
  origin: { file: 'as given', default: 'filled in' },
  cautionsHead: 'Take care',
  methodHead: 'How this was worked out, and how far to trust it',
  method: [
    'Guests arrive by chance, party by party, through a rush that is drawn anew for each day; some days are busier than others. Every cup, glass, saucer and spoon is followed from the shelf to the table, the bench, the rack, the machine and back. A day is safe if no drink ever lacked its ware.',
    'The stock is the cheapest that keeps the share of safe days asked for, all ware together. It is chosen on one set of days and tried on another that played no part in the choice; the share told is that of the second set, with its interval.',
    'The interval covers the luck of the draw alone. It does not cover inputs that are wrong: if guests stay longer or the machine is slower than said here, the stock will be too small however narrow the interval.',
  ],
  methodListed:
    'The days were listed, not drawn; the stock is right for them, and says nothing certain of other days.',
  informs: 'This letter informs a purchase; it certifies nothing.',
  colophon: (version: string, seed: string): string =>
    `Made by cuptide ${version}, seed ${seed}. The same file and seed give the same letter. Set in Literata and Inter, typefaces under the SIL Open Font License 1.1.`,
};
