/**
 * Small houses to spoil: a hundredth of the work of the demos, with the parts of a scenario shared out among them, so
 * that a hundred thousand cases are an hour's work and a change mostly falls on something that matters.
 */
import { parse } from 'yaml';

type Tree = Record<string, unknown>;

const kiosk = `
name: Reed Kiosk
currency: EUR
staffHour: 20 EUR
level: 90 %
hours: { from: "08:00", to: "09:00" }
arrivals: { peak: { guests: { value: 24 / h, basis: measured, range: [20 / h, 30 / h] }, shape: [1, 3, 2] }, dayFactor: 0.2 }
guests:
  partySize: { 1: 60 %, 2: 40 % }
  staysIn: 60 %
  drinksEach: 1.1
  secondDrink: 10 %
  dwell: { bySize: { 1: { lognormal: { mean: 12 min, sd: 6 min } }, 2: { gamma: { mean: 15 min, sd: 5 min } } } }
menu:
  coffee: { name: Coffee, share: 70 %, setting: [cup, saucer], fallBacks: [[mug], takeaway], making: 40 s }
  tea: { share: 30 %, setting: [mug], making: 20 s }
ware:
  cup: { like: medium-cup, name: Cup, price: 4 EUR }
  mug: { like: mug, price: 5 EUR }
  saucer: { like: saucer, rim: 150 mm, well: 62 mm, price: 2 EUR, family: china }
racks: { families: { china: open }, owned: { open: 3 } }
seats: { count: 12, whenFull: takeaway }
counter: { makers: 1, making: 40 s }
clearing: { every: about 8 min, clearers: 1, tripPieces: 10, trip: about 30 s }
washing: { machines: [{ class: undercounter, cycle: 100 s }], hands: clearers, partLoadWait: about 6 min }
calendar:
  kinds:
    weekday: { daysAYear: 250 }
    sunday: { name: Sundays, daysAYear: 52, scale: { arrivals.peak.guests: 130 % }, change: { guests.staysIn: 70 % } }
`;

const tearoom = `
name: Plum Tearoom
currency: GBP
locale: en-GB
staffHour: 15 GBP
hours: { from: "14:00", to: "15:30" }
arrivals: { slots: { every: 30 min, parties: [4, 7, 3] }, dayFactor: { value: 0.2, range: [0.1, 0.3] } }
guests:
  partySize: { 1: 30 %, 2: 50 %, 4: 20 % }
  staysIn: [{ for: 45 min, staysIn: 70 % }, { for: 45 min, staysIn: 90 % }]
  secondDrink: 20 %
  dwell: { value: { lognormal: { mean: 25 min, sd: 9 min } }, range: [{ lognormal: { mean: 20 min, sd: 9 min } }, { lognormal: { mean: 30 min, sd: 9 min } }] }
menu:
  tea: { share: 75 %, setting: [cup, saucer, teaspoon], making: 30 s }
  juice: { share: 25 %, setting: [tumbler], making: 20 s }
ware:
  cup: { price: 6 GBP, rim: 90 mm, height: 65 mm, perRack: 16, drying: 60 s }
  saucer: { like: saucer, price: 3 GBP }
  teaspoon: { like: teaspoon, price: 1 GBP }
  tumbler: { like: tumbler, price: 2 GBP, polishing: 6 s }
racks: { families: { glasses: grid-25, saucers: peg }, owned: { open: 2, grid-25: 2, peg: 1, cutlery: unlimited } }
seats: { count: 14, whenFull: wait, waitLimit: 8 min, heldUntilCleared: true }
counter: { makers: 2, making: 30 s }
clearing: { every: about 5 min, clearers: 1, tripPieces: 12, trip: about 40 s }
washing:
  machines: [{ class: hood, warmUp: 5 min, down: [{ from: "14:40", for: 10 min }] }]
  hands: 1
  partLoadWait: about 10 min
  partLoadFrom: 50 %
  otherLoads: { racks: [{ for: 30 min, racks: 6 / h }, { for: 60 min, racks: 12 / h }], arrivals: regular, goes: inTurn }
alternatives:
  second-machine: { change: { "washing.machines[1]": { class: hood } } }
  more-takeaway: { name: Fewer stay, scale: { guests.staysIn: 90 % } }
costs: { daysAYear: 104, horizonYears: 8, discount: 6 %, waterPerM3: 3 GBP, energyPer100kWh: 30 GBP }
`;

const bar = `
name: Gull Bar
currency: USD
staffHour: 18 USD
hours: { from: "09:00", to: "10:00" }
arrivals: { steps: [{ for: 60 min, parties: 0.4 / min }], dayFactor: 0 }
guests: { partySize: 1, staysIn: 80 %, dwell: { measured: [8 min, 12 min, 20 min, 31 min] } }
menu:
  latte: { share: 60 %, setting: [cup, teaspoon], fallBacks: [takeaway], making: 45 s }
  espresso: { share: 40 %, setting: [cup], making: 30 s }
ware:
  cup: { like: large-cup, price: 5 USD }
  teaspoon: { like: teaspoon, price: 1 USD, perRack: 80 }
seats: { count: unlimited }
counter: { makers: unlimited, making: 30 s }
clearing: atOnce
washing: { machines: [{ racks: 1, loading: 10 s, cycle: 90 s, unloading: 10 s }], hands: unlimited, partLoadWait: never }
suit:
  shot: { dose: 19 g, yield: 38 g, extraction: 20 % }
  coffee: 24 USD
  papers: { large: { nominal: 12 fl oz, brim: 400 ml } }
  drinks: { latte: { paper: large, share: 100 %, foam: 8 mm } }
supply:
  review: 28 days
  horizon: 365 days
  handling: 0.5 staff hours
  suppliers:
    quay:
      leadTime: 7 days
      freight: { fixed: 14 USD, perCarton: 3 USD, freeFrom: 900 USD }
      tax: 8 %
      quotes: { cup: { price: 5 USD, carton: 6 }, teaspoon: { price: 1 USD, carton: 24 } }
  takeaway:
    cups: { large: { drinks: [latte, espresso], sleeve: 50, price: 0.12 USD, lid: lid } }
    lids: { lid: { sleeve: 100, price: 0.04 USD } }
storage: { top: { width: 700 mm, depth: 380 mm, high: 2 } }
have: { ware: { cup: 12 } }
`;

/** Text of each, as it stands. */
export const smallTexts: readonly string[] = [kiosk, tearoom, bar];
export const smallHouses: readonly Tree[] = smallTexts.map((text) => parse(text) as Tree);
