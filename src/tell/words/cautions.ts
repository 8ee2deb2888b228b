/** Words of the cautions: what to mind, and to whose rules it defers. Temperatures come as ready-made text. */
export interface FoodCodeTexts {
  readonly washSingle: string;
  readonly washDual: string;
  readonly washChemical: string;
  readonly rinse: string;
  readonly rinseSingle: string;
  readonly rinseMost: string;
  readonly surface: string;
}

export const cautionWords = {
  defers: 'Follow',
  scalds: {
    title: 'Scalds',
    text: 'Hot drinks, hot ware and hot rinse water scald. Carry full cups below shoulder height and away from children; let a rack drip and cool before you reach in.',
    defersTo: 'local consumer and workplace law',
  },
  sanitisingHot: {
    title: 'Clean and safe cups and glasses',
    text: (t: FoodCodeTexts): string =>
      `A hot-rinse machine must reach its temperatures on every load, however long the queue. For a stationary-rack machine the FDA Food Code requires a wash at ${t.washDual} or more (${t.washSingle} where wash and rinse have one temperature) and a final rinse at ${t.rinse} or more (${t.rinseSingle} for the latter), never above ${t.rinseMost}, so that the surface of the cups itself reaches ${t.surface}. Never shorten a cycle to keep up. Let everything dry in the air; no towels.`,
    defersTo:
      'FDA Food Code 4-501.110, 4-501.112 and 4-703.11, FSANZ Standard 3.2.2, EN 17735, and the local food authority',
  },
  sanitisingChemical: {
    title: 'Clean and safe cups and glasses',
    text: (t: FoodCodeTexts): string =>
      `A machine that sanitises with a chemical must be dosed and tested as its maker says; the FDA Food Code requires wash water at ${t.washChemical} or more. Cups come out cool and dry slowly: leave them in the air, no towels. Never shorten a cycle to keep up.`,
    defersTo:
      'FDA Food Code 4-501.110, FSANZ Standard 3.2.2, EN 17735, and the local food authority',
  },
  sanitisingUnknown: {
    title: 'Clean and safe cups and glasses',
    text: (t: FoodCodeTexts): string =>
      `Know how your machine sanitises, and check it daily. With heat, the FDA Food Code requires of a stationary-rack machine a wash at ${t.washDual} or more (${t.washSingle} where wash and rinse have one temperature) and a final rinse at ${t.rinse} or more (${t.rinseSingle} for the latter), never above ${t.rinseMost}; with a chemical, wash water at ${t.washChemical} or more and the dose its maker states. Never shorten a cycle to keep up. Let everything dry in the air; no towels.`,
    defersTo:
      'FDA Food Code 4-501.110, 4-501.112 and 4-703.11, FSANZ Standard 3.2.2, EN 17735, and the local food authority',
  },
  chemicals: {
    title: 'Detergent and rinse aid',
    text: 'Machine detergent is caustic. Wear gloves and eye protection when you handle it; never pour it into a drinks bottle; never mix it with anything.',
    defersTo: 'the safety data sheet and local chemical-safety law',
  },
  chipped: {
    title: 'Chipped and crazed pieces',
    text: 'Take chipped, cracked or crazed pieces out of use at once: they cut, and cannot be cleaned properly. Buy only ware that is sold for food, glazed, and tested for the release of metals.',
    defersTo: 'FDA Food Code 4-101, ISO 6486 (ceramics) and ISO 7086 (glass)',
  },
  brokenGlass: {
    title: 'Broken glass',
    text: 'If glass breaks near ice or food, throw all of it away; empty and clean the whole bin before it is used again. Never scoop ice with a glass.',
    defersTo: 'your food-safety plan',
  },
  lifting: {
    title: 'Lifting',
    text: 'A full rack can weigh 12 kg, and so can a carton of cups. Keep both between knee and shoulder height and close to the body; if in doubt, lift with two people.',
    defersTo: 'ISO 11228-1, NIOSH 94-110 and the local code',
  },
  services: {
    title: 'Power, water and drain',
    text: 'A new or moved machine needs the right power, water, drain and backflow protection. That is work for licensed trades.',
    defersTo:
      'AS/NZS 3000 and 3500.1, IEC 60335-2-58, or their local equivalents, and what licensed electricians and plumbers say',
  },
  stacks: {
    title: 'Stacks on the espresso machine',
    text: 'Stack no more, and no higher, than the machine’s manual allows; two high at most. Stacks fall, and block vents and hot surfaces.',
    defersTo: 'the machine’s manual',
  },
};
