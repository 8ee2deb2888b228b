/** A house made to burst its cards: many kinds of ware with long and hostile names, in one family and in many. */
const HOSTILE = [
  '</script><script>alert(1)</script>',
  `"><img src=x onerror='alert(1)'>`,
  '\u202Eevil\u2066',
  '&amp;<b>',
  'x'.repeat(10_000),
  'Grosse Milchkaffeetasse mit breitem Henkel und Goldrand',
];

/** Ends of the range of widths, heights and handles that fit an open rack. */
const ware = (index: number, family: string): string =>
  `  w${index}: { like: ${['medium-cup', 'large-cup', 'espresso-cup', 'mug'][index % 4]}, name: ${JSON.stringify(`${HOSTILE[index % HOSTILE.length]!} ${index}`)}, family: ${family}, price: ${2 + index} EUR }`;

export function stressedHouse(
  kinds: number,
  families: number,
  clearing = '{ every: 95 s, clearers: 3, tripPieces: 9, trip: 65 s }',
  more = '',
): string {
  const ids = Array.from({ length: kinds }, (_, index) => index);
  return `name: ${JSON.stringify(HOSTILE.join(' '))}
currency: EUR
staffHour: 20 EUR
hours: { from: "07:00", to: "08:30" }
arrivals: { slots: { every: 30 min, parties: [12, 18, 14] } }
guests: { staysIn: 80 % }
menu:
${ids.map((index) => `  d${index}: { share: ${100 / kinds} %, setting: [w${index}, spoon], fallBacks: [takeaway] }`).join('\n')}
ware:
${ids.map((index) => ware(index, `f${index % families}`)).join('\n')}
  spoon: { like: teaspoon, name: ${JSON.stringify(HOSTILE[1])} }
seats: { count: 30, whenFull: leave, heldUntilCleared: true }
counter: { makers: 3, making: 30 s }
clearing: ${clearing}
washing: { machines: [{ class: undercounter, racks: 2 }], hands: 2, partLoadWait: 4 min, partLoadsEvery: 15 min }
${more}`;
}

export const TRICKS = HOSTILE;
