/** What the guide says, in words. Arguments are ready-made text unless their name says otherwise. */
export const say = {
  heading: 'Planning guide: cups, glasses, saucers and spoons by size of café',
  lead: (name: string, level: string): string =>
    `What to have clean when you open a café run like ${name}, so that nothing runs out in ${level} of rushes.`,
  pattern: (guests: string, seats: string, aSeat: string, stay: string): string =>
    `The pattern: ${seats} seats and ${guests} guests in the busiest hour. For each seat ${aSeat} guests sit down in that hour; they stay ${stay} on average.`,

  vessels: 'Which vessel for which drink',
  drink: 'Drink',
  house: 'In the house',
  away: 'To take away',
  share: 'Share',
  moreDrinks: (count: string): string => `${count} more drinks (see --json)`,
  paperOnly: 'paper cup in the house too',
  paper: 'paper cup, size not in the file',
  sold: (size: string): string => `sold as ${size}`,
  brim: (volume: string): string => `${volume} to the brim`,
  rim: (length: string): string => `rim ${length}`,
  with: (list: string): string => `with ${list.toLowerCase()}`,

  houses: 'What a café needs: pieces ± error',
  housesAt: (takeaway: string): string =>
    `What a café needs where ${takeaway} take away: pieces ± error`,
  seatInBrackets: ' (for each seat)',
  perSeat: '– for each seat',
  item: 'Item',
  seats: (count: string): string => `${count} seats`,
  seatsAway: (count: string, takeaway: string): string => `${count} seats with ${takeaway} away`,
  aCup: '– for each cup or glass it goes with',
  moreWare: (count: string): string => `${count} more kinds, all pieces (see the CSV)`,
  ware: 'Cost of all pieces ± error',
  racks: (kind: string): string => `Racks: ${kind}`,
  racksCost: 'Racks, cost',
  shelf: 'Shelf for all pieces in one layer',
  makers: 'People making drinks (busy)',
  clearers: 'People clearing (busy)',
  hands: 'People at the dishwasher (busy)',
  machines: 'Dishwashers (busy)',
  guests: 'Guests in the busiest hour',
  paperCups: 'Paper cups per rush',
  needed: 'as needed',
  none: '–',

  changes: (seats: string): string =>
    `What to change if … (café of ${seats} seats, as in the file)`,
  /** @param guests a sentence of guests who find a seat or none, or '' */
  changed: (name: string, pieces: string, cost: string, guests: string): string =>
    `${name}: ${pieces}, ${cost}.${guests}`,
  unchanged: 'no change in pieces',
  sameCost: 'the same cost',
  moreAway: (guests: string): string => ` ${guests} more guests per rush find no seat.`,
  fewerAway: (guests: string): string => ` ${guests} fewer guests per rush find no seat.`,
  pieces: (signed: string, one: boolean): string => `${signed} ${one ? 'piece' : 'pieces'}`,

  how: 'How this was made, and what is assumed',
  same: (busy: string): string =>
    `For each seat as many guests come to sit as in the file. Staff, racks and plates grow with the work: as few as possible, but none with more work than in the file${busy}.`,
  moreMachines: (half: string): string =>
    `A larger café has one more dishwasher only where those of the file would be busy for more than ${half} of the time (assumed), or for more of it than in the file.`,
  busy: (list: string): string => ` (there: ${list} busy)`,
  /** What is busy. */
  busyPart: {
    makers: 'making drinks',
    clearers: 'clearing',
    hands: 'dishwashing',
    machines: 'dishwashers',
  },
  takeaway:
    'A higher takeaway share adds guests who take away; as many as before sit down. So it changes paper cups and people making drinks more than cups.',
  days: (days: string, fresh: string, changes: string): string =>
    `Each stock is the cheapest that meets the level, chosen on ${days} simulated days and measured on ${fresh} others; lines under “What to change” compare the same ${changes} days. The command size takes more days for one café, so its answer may differ within the error.`,
  error:
    'The error (95 %) is that of the simulation; wrong inputs come on top of it. Saucers and spoons are sized together with their cups: their number comes from the simulation, not from a rule.',
  noError: 'No error is given where a washing rule depends on how much clean stock is left.',
  owned: 'What you own already is left out.',
  spares: 'Not counted: spares for breakage and loss, machines, freight and tax.',
  assumed: (assumed: string, all: string, list: string): string =>
    `${assumed} of ${all} inputs are not measured or published. Of these, the following usually matter most: ${list}. Which of them do in one café, the command measure works out.`,
  noneAssumed: (assumed: string, all: string): string =>
    `${assumed} of ${all} inputs are not measured or published.`,
  missed: (houses: string): string =>
    `Tested on other days, these fell short of the level you asked for: ${houses}. Work it out on more days (--days at a terminal).`,
  overloaded: (houses: string): string =>
    `Here work comes in faster than it is done: ${houses}. The command size says where (its warnings).`,

  cautions: 'Take care',
  certifies:
    'This helps you decide what to buy; it is not a guarantee. Local codes, the machine’s manual and licensed trades go before anything printed here.',
  made: (version: string, seed: string): string => `Made by cuptide ${version}, seed ${seed}.`,
};
