/**
 * Who reads a field: the questions whose answers a value of the file can change, found by running them
 * (tests/questions/fields.test.ts, which holds this table). A place stands for all that lies below it; what
 * `size` reads, the others read too, as they start from its answer.
 */
export const READS: Readonly<Record<string, string>> = {
  size: `
    arrivals calendar clearing counter.makers currency guests have.ware hours level locale menu name
    racks seats seed staffHour suit.guests ware.*.depth ware.*.drying ware.*.family
    ware.*.foot ware.*.footprint ware.*.handle ware.*.handleTip ware.*.handleWidth
    ware.*.height ware.*.lowWater ware.*.mass ware.*.name ware.*.perRack ware.*.polishing
    ware.*.price ware.*.rim ware.*.rimAcross ware.*.shape washing.hands
    washing.machines.breakdown washing.machines.class washing.machines.count
    washing.machines.cycle washing.machines.loading washing.machines.racks
    washing.machines.unloading washing.machines.warmUp washing.otherLoads washing.partLoadFrom
    washing.partLoadWait washing.partLoadsEvery`,
  compare: `
    alternatives costs.detergentPerKg costs.discount costs.energyPer100kWh costs.horizonYears
    costs.indifference costs.map costs.rack costs.rinseAidPerL costs.rushShare costs.service
    costs.shortDrink costs.staffCounted costs.waterPerM3 have.machines have.racks
    supply.losses.*.perThousandUses supply.losses.*.walkOff supply.rushShare
    supply.suppliers.*.freight.fixed supply.suppliers.*.freight.perCarton
    supply.suppliers.*.freight.steps.fixed supply.suppliers.*.freight.steps.from
    supply.suppliers.*.freight.steps.perCarton supply.suppliers.*.quotes.*.carton tune
    ware.*.like washing.machines.detergent washing.machines.energy washing.machines.idlePower
    washing.machines.installation washing.machines.lifeYears washing.machines.price
    washing.machines.rinseAid washing.machines.water`,
  suit: `
    storage suit.airInFoam suit.coffee suit.drinks suit.firstSip suit.machine suit.milk
    suit.milkFrom suit.papers suit.parity suit.restOfShot suit.room suit.shot suit.ware
    suit.warmed supply.saucers ware.*.brim ware.*.colour ware.*.well`,
  order: `
    storage supply.confidence supply.date supply.handling supply.holding supply.horizon
    supply.losses supply.onHand supply.orders supply.promise supply.review supply.saucers
    supply.shareFreightBy supply.suppliers.*.freight.freeFrom supply.suppliers.*.freight.steps
    supply.suppliers.*.leadTime supply.suppliers.*.minimumOrder supply.suppliers.*.name
    supply.suppliers.*.quotes supply.suppliers.*.repeat supply.suppliers.*.tax supply.takeaway
    supply.tax ware.*.brim ware.*.colour ware.*.like ware.*.well`,
  collections: `
    collections storage.onTop storage.reserve storage.top storage.trigger
    suit.airInFoam suit.coffee suit.drinks suit.firstSip suit.machine suit.milk suit.milkFrom
    suit.papers suit.parity suit.restOfShot suit.room suit.shot suit.ware suit.warmed
    supply.confidence supply.date supply.handling supply.holding supply.horizon supply.losses
    supply.onHand supply.orders supply.promise supply.review supply.saucers
    supply.shareFreightBy supply.suppliers.*.freight.freeFrom supply.suppliers.*.freight.steps
    supply.suppliers.*.leadTime supply.suppliers.*.minimumOrder supply.suppliers.*.name
    supply.suppliers.*.quotes supply.suppliers.*.repeat supply.suppliers.*.tax
    supply.takeaway.cups.*.drinks supply.takeaway.cups.*.lid supply.takeaway.cups.*.price
    supply.takeaway.lids.*.price supply.tax ware.*.brim ware.*.colour ware.*.like ware.*.well`,
};

const isUnder = (field: string, place: string): boolean =>
  field === place || field.startsWith(`${place}.`);

/** Names of the questions that read a field, by its general path ('ware.*.price'), or any field below it. */
export function readersOf(field: string): string[] {
  return Object.entries(READS).flatMap(([name, places]) =>
    places
      .trim()
      .split(/\s+/)
      .some((place) => isUnder(field, place) || isUnder(place, field))
      ? [name]
      : [],
  );
}
