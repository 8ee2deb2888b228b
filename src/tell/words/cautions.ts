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
  defers: 'Defer to',
  scalds: {
    title: 'Scalds',
    text: 'Hot drinks, hot ware and hot rinse water scald. Carry full cups below shoulder height and away from children; let a rack drip and cool before hands go in.',
    defersTo: 'local consumer and workplace law',
  },
  sanitisingHot: {
    title: 'Clean and safe ware',
    text: (t: FoodCodeTexts): string =>
      `A hot-rinse machine must reach its temperatures on every load, however long the queue. The FDA Food Code asks, of a stationary-rack machine, a wash at ${t.washDual} or more (${t.washSingle} where wash and rinse have one temperature) and a final rinse at ${t.rinse} or more (${t.rinseSingle} for the latter), never above ${t.rinseMost}, so that the ware itself reaches ${t.surface}. Never shorten a cycle to keep up. Let ware dry in the air; no towels.`,
    defersTo:
      'FDA Food Code 4-501.110, 4-501.112 and 4-703.11, FSANZ Standard 3.2.2, EN 17735, and the local food authority',
  },
  sanitisingChemical: {
    title: 'Clean and safe ware',
    text: (t: FoodCodeTexts): string =>
      `A machine that sanitises by chemical must be dosed and tested as its maker says; the FDA Food Code asks for wash water at ${t.washChemical} or more. Ware comes out cool and dries slowly: leave it in the air, no towels. Never shorten a cycle to keep up.`,
    defersTo:
      'FDA Food Code 4-501.110, FSANZ Standard 3.2.2, EN 17735, and the local food authority',
  },
  sanitisingUnknown: {
    title: 'Clean and safe ware',
    text: (t: FoodCodeTexts): string =>
      `Know how your machine makes ware safe, and check it daily. By heat, the FDA Food Code asks, of a stationary-rack machine, a wash at ${t.washDual} or more (${t.washSingle} where wash and rinse have one temperature) and a final rinse at ${t.rinse} or more (${t.rinseSingle} for the latter), never above ${t.rinseMost}; by chemical, wash water at ${t.washChemical} or more and the dose its maker names. Never shorten a cycle to keep up. Let ware dry in the air; no towels.`,
    defersTo:
      'FDA Food Code 4-501.110, 4-501.112 and 4-703.11, FSANZ Standard 3.2.2, EN 17735, and the local food authority',
  },
  chemicals: {
    title: 'Detergent and rinse aid',
    text: 'Machine detergent is caustic: gloves and eye protection when handling it, never decanted into a drinks bottle, never mixed with anything.',
    defersTo: 'the safety data sheet and local chemical-safety law',
  },
  chipped: {
    title: 'Chipped and crazed ware',
    text: 'Take chipped, cracked or crazed ware out of use at once: it cuts, and cannot be made clean. Buy only ware sold for food, glazed and tested for release of metals.',
    defersTo: 'FDA Food Code 4-101, ISO 6486 (ceramics) and ISO 7086 (glass)',
  },
  brokenGlass: {
    title: 'Broken glass',
    text: 'If glass breaks near ice or food, throw all of it away; empty and clean the whole bin before it is used again. Never scoop ice with a glass.',
    defersTo: 'your food-safety plan',
  },
  lifting: {
    title: 'Lifting',
    text: 'A full rack weighs 8 to 12 kg, a carton of cups as much: keep both between knee and shoulder height, close to the body, two people where in doubt.',
    defersTo: 'ISO 11228-1, NIOSH 94-110 and the local code',
  },
  services: {
    title: 'Power, water and drain',
    text: 'A new or moved machine needs the right power, water, drain and backflow protection. That is work for licensed trades.',
    defersTo:
      'licensed electricians and plumbers; AS/NZS 3000 and 3500.1, IEC 60335-2-58, or their local equivalents',
  },
  stacks: {
    title: 'Stacks on the espresso machine',
    text: 'Stack no more, and no higher, than the machine’s manual allows; two high at most. Stacks fall, and block vents and hot surfaces.',
    defersTo: 'the machine’s manual',
  },
};
