/** Small cafés that between them use every law of durations, the geometry of racks and the search. */
const common = {
  currency: 'EUR',
  staffHour: '20 EUR',
  hours: { for: '90 min' },
  counter: { makers: 1, making: '20 s' },
  clearing: { every: '5 min', clearers: 1, tripPieces: 10, trip: '60 s' },
  washing: {
    machines: [{ racks: 1, loading: '20 s', cycle: '3 min', unloading: '20 s' }],
    hands: 1,
    partLoadWait: '8 min',
  },
};

export const SCENARIOS: Readonly<Record<string, string>> = {
  'lognormal dwell, days that differ, two drinks': JSON.stringify({
    ...common,
    name: 'Two drinks',
    arrivals: { steps: [{ for: '90 min', parties: '30 / h' }], dayFactor: 0.2 },
    guests: {
      partySize: { 1: 0.5, 2: 0.4, 3: 0.1 },
      staysIn: '80 %',
      drinksEach: 1.2,
      secondDrink: 0.2,
      dwell: { lognormal: { mean: '30 min', sd: '15 min' } },
    },
    menu: {
      coffee: {
        share: 0.7,
        setting: ['cup', 'saucer'],
        making: { gamma: { mean: '40 s', sd: '15 s' } },
      },
      tea: { share: 0.3, setting: ['mug'], making: { exponential: '30 s' } },
    },
    ware: {
      cup: { like: 'medium-cup', price: '4 EUR', drying: '2 min' },
      saucer: { like: 'saucer', price: '2 EUR' },
      mug: { like: 'mug', price: '5 EUR' },
    },
    seats: { count: 40 },
  }),
  'exponential dwell, plain racks': JSON.stringify({
    ...common,
    name: 'One cup',
    arrivals: { steps: [{ for: '90 min', parties: '1 / min' }], dayFactor: 0 },
    guests: {
      partySize: 1,
      staysIn: '100 %',
      drinksEach: 1,
      secondDrink: 0,
      dwell: { exponential: '20 min' },
    },
    menu: { coffee: { share: 1, setting: ['cup'], making: '0 s' } },
    ware: { cup: { price: '1 EUR', perRack: 25, drying: '0 s' } },
    seats: { count: 'unlimited' },
  }),
  'gamma dwell of a wide spread': JSON.stringify({
    ...common,
    name: 'Wide spread',
    arrivals: { steps: [{ for: '90 min', parties: '25 / h' }], dayFactor: 0.1 },
    guests: {
      partySize: 2,
      staysIn: '90 %',
      drinksEach: 1,
      secondDrink: 0.1,
      dwell: { gamma: { mean: '25 min', sd: '30 min' } },
    },
    menu: { coffee: { share: 1, setting: ['cup', 'spoon'], making: '30 s' } },
    ware: {
      cup: { like: 'medium-cup', price: '4 EUR' },
      spoon: { like: 'teaspoon', price: '1 EUR' },
    },
    seats: { count: 30, whenFull: 'takeaway' },
  }),
};
