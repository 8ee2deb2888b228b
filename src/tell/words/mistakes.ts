/** Words of the cards of wrong and right ways to fill a rack. Figures come as ready-made text. */
export const mistakeWords = {
  title: (part: string, of: string): string => `Racks: wrong and right (${part} of ${of})`,
  wrong: 'Wrong',
  right: 'Right',
  label: (right: boolean, title: string): string =>
    right ? `Right way: ${title}` : `Wrong way: ${title}`,
  typical: 'Drawn with a typical piece.',
  drawn: (name: string): string => `Drawn: ${name}.`,
  caution:
    'Broken glass: stop, clear it with a brush, not with your hands, and wash the whole rack again. Racks come out hot and heavy: let them drip, lift close to your body, two people if in doubt. Local rules and the machine’s manual come first.',
  upright: {
    title: 'Standing upright',
    text: 'Upright pieces fill with dirty water and stay full. Put every piece in upside down.',
  },
  nested: {
    title: 'One inside another',
    text: 'Water does not reach the inside of the upper piece, and pieces that stick together break. One layer only.',
  },
  tooMany: {
    title: 'One too many',
    text: (fits: string, then: string): string =>
      `${fits} fit. Number ${then} lies on the others: it keeps the water from them and chips rims. Start another rack.`,
  },
  handles: {
    title: 'Handles that hit each other',
    text: (fits: string): string =>
      `Handles that push against the next cup break off and hold the rack apart. Turn them all as drawn: then ${fits} fit.`,
  },
  half: {
    title: 'Started half-empty',
    text: (load: string, fits: string, half: string, each: string, halfEach: string): string =>
      `A load takes ${load} with ${half} or with ${fits} in it: ${halfEach} a piece, not ${each}.`,
    wait: (time: string): string =>
      `Wait until it is full, or until the first piece has waited ${time}.`,
    full: 'Wait until it is full.',
  },
  mixed: {
    title: 'Glass and china together',
    text: 'Glass knocks against the harder china and chips. Each has a rack of its own.',
  },
  saucers: {
    title: 'Saucers that touch',
    text: (gap: string): string =>
      `Where two saucers touch, no water gets between them. Leave ${gap} between them, all facing one way.`,
    flat: (fits: string): string =>
      `What is under another saucer stays dirty. ${fits} lie side by side in this rack; stop there.`,
  },
  flat: {
    title: 'Glasses in a rack without compartments',
    text: (fits: string): string =>
      `They tip over and knock against each other. In the right rack ${fits} stand, each in a compartment of its own.`,
  },
  tall: {
    title: 'Too tall',
    extender: (tall: string, limit: string, extenders: string, one: boolean): string =>
      `The glass is ${tall} high, the rack takes ${limit}. Put ${extenders} ${one ? 'extender' : 'extenders'} on the rack, if the machine takes it that high.`,
    text: (limit: string): string =>
      `This rack takes pieces up to about ${limit}; measure yours, and look in the manual. Anything taller stops the spray arm or hits the door. Wash it by hand.`,
  },
  narrow: {
    title: 'Compartments too small',
    text: (rim: string, opening: string, right: string): string =>
      `The piece is ${rim} wide, the compartment ${opening}: it sticks or stands askew. Take the rack with ${right} compartments.`,
  },
  over: {
    title: 'Over the edge',
    text: 'What stands out over the edge catches on the door or the next rack, and breaks. Keep it all inside the walls.',
  },
  spoons: {
    title: 'Spoons in a heap',
    text: 'Spoons that lie in one another stay dirty between. Spread them, bowls and handles mixed, one layer.',
  },
};
