/** Cautions that go with an order, each with what it defers to. The sheet informs a purchase; it certifies nothing. */

export interface Caution {
  readonly id: string;
  readonly text: string;
  readonly defersTo: string;
}

const LIFTING: Caution = {
  id: 'lifting',
  text: 'A carton of china is heavy. Lift with a straight back and close to the body, share or split heavy cartons, and keep them off high shelves.',
  defersTo: 'ISO 11228-1, the lifting guide NIOSH 94-110, and local workplace law',
};
const HOT_STACKS: Caution = {
  id: 'hot-machine',
  text: 'The top of an espresso machine is hot and takes a limited load. Stack no higher than its manual allows, keep vents free, and keep stacks away from edges and steam.',
  defersTo: "the machine's manual",
};
const CHIPPED: Caution = {
  id: 'chipped',
  text: 'Take chipped, cracked or crazed pieces out of use at once: edges cut, cracks cannot be kept clean, and a worn glaze may release metal. Count them as retired.',
  defersTo:
    'FDA Food Code 4-101, ISO 6486 and ISO 7086 on metal release, and the local food authority',
};
const BROKEN_GLASS: Caution = {
  id: 'broken-glass',
  text: 'Where glass breaks near ice or food, discard what may hold splinters, empty and clean the whole bin, and never pick splinters up by hand.',
  defersTo: "the café's food-safety plan and local food law",
};

/** The cautions that apply to an order. */
export function orderCautions(applies: {
  readonly cartons: boolean;
  readonly machineTop: boolean;
  readonly china: boolean;
  readonly glass: boolean;
}): readonly Caution[] {
  return [
    ...(applies.cartons ? [LIFTING] : []),
    ...(applies.machineTop ? [HOT_STACKS] : []),
    ...(applies.china || applies.glass ? [CHIPPED] : []),
    ...(applies.glass ? [BROKEN_GLASS] : []),
  ];
}
