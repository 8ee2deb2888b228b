/** What is to be said of a vessel by itself. */
import { fitWords, isMisfit } from '../racking/saucer-fit.js';
import type { Finding, WareAnswer } from './answer.js';
import { FACTS } from './facts.js';
import { rackCliff } from './fit.js';
import { scaldCaution } from './scald.js';
import { plainTests } from './sheet.js';
import { celsius, grams } from './words.js';
import { type FindingsInput, make } from './finding.js';

export function hotWall(ware: WareAnswer): Finding[] {
  if (ware.outerWallC === null || ware.outerWallC < FACTS.hotWallC.value) return [];
  return [
    make(
      'harm',
      'hot-wall',
      ware.ware,
      `ware.${ware.ware}.handle`,
      ware.outerWallC,
      'published',
      `${ware.name} has no handle, and its wall reaches ${celsius(ware.outerWallC)}: ${scaldCaution(ware.outerWallC)}. Use a handle, a double wall or a sleeve.`,
    ),
  ];
}

export function hardToHold(ware: WareAnswer, all: FindingsInput): Finding[] {
  if (ware.grip === null) return [];
  const found = ware.grip.flags.map((flag) => {
    const [what, limit] =
      flag.code === 'heavy'
        ? [`weighs ${grams(flag.value)} filled`, `over ${grams(flag.limit)}`]
        : [
            `has a handle opening ${Math.round(flag.value)} mm ${flag.code === 'narrow-opening' ? 'wide' : 'tall'}`,
            `under ${flag.limit} mm`,
          ];
    return make(
      'unusable',
      flag.code,
      ware.ware,
      flag.code === 'heavy' ? `ware.${ware.ware}.mass` : `suit.ware.${ware.ware}.opening`,
      Math.abs(flag.value / flag.limit - 1),
      flag.basis,
      `${ware.name} ${what}, ${limit}. People with weak hands find that hard to hold (source of the limit: ${flag.source}).`,
    );
  });
  if (ware.grip.momentNm !== null && ware.grip.easy === null && all.reads.easyHandle > 0) {
    found.push(
      make(
        'unknown',
        'opening-unknown',
        ware.ware,
        `suit.ware.${ware.ware}.opening`,
        0.3,
        'assumed',
        `${ware.name}: the file does not give the opening of the handle, so it is not known whether it is easy to hold. Measure its width and height.`,
      ),
    );
  }
  return found;
}

export function saucers(ware: WareAnswer): Finding[] {
  return ware.saucers
    .filter(isMisfit)
    .map((fit) =>
      make(
        fit.byMeasures === 'foot too wide' ? 'unusable' : 'note',
        fit.byMeasures === 'foot too wide' ? 'saucer-too-small' : 'saucer-loose',
        ware.ware,
        `ware.${fit.saucer}.well`,
        Math.abs(fit.clearanceMm!),
        fit.typical ? 'assumed' : 'measured',
        `${ware.name} on ${fit.saucer}: ${fitWords(fit, (mm) => `${mm.toFixed(1)} mm`)}.`,
      ),
    );
}

export function spout(ware: WareAnswer): Finding[] {
  if (ware.spout === null || ware.spout.fits) return [];
  return [
    make(
      'unusable',
      'under-spout',
      ware.ware,
      `ware.${ware.ware}.height`,
      -ware.spout.spareMm,
      'measured',
      `${ware.name} is ${(-ware.spout.spareMm).toFixed(1)} mm too tall to stand under the spout: make shots for it in a jug.`,
    ),
  ];
}

export function racks(ware: WareAnswer): Finding[] {
  const cliff = ware.rack === null ? null : rackCliff(ware.rack);
  if (cliff === null) return [];
  return [
    make(
      cliff.code === 'tight' ? 'note' : 'cost',
      `rack-${cliff.code}`,
      ware.ware,
      `ware.${ware.ware}.rim`,
      ware.rack!.narrower === null ? 0 : ware.rack!.narrower.pieces / ware.rack!.pieces - 1,
      'assumed',
      `${ware.name}: ${cliff.words}.`,
    ),
  ];
}

/** One finding for all ware of which the same tests are to be asked for. */
export function unasked(all: readonly WareAnswer[]): Finding[] {
  const asked = new Map<string, WareAnswer[]>();
  for (const ware of all) {
    const open = ware.checklist.filter((line) => !line.shown).map((line) => line.standard);
    const tests = plainTests(open).join(', ');
    asked.set(tests, [...(asked.get(tests) ?? []), ware]);
  }
  return [...asked].flatMap(([tests, ware]) =>
    tests === ''
      ? []
      : [
          make(
            'unknown',
            'tests-to-ask',
            ware[0]!.ware,
            `suit.ware.${ware[0]!.ware}.tests`,
            0.1,
            'assumed',
            `${ware.map(({ name }) => name).join(', ')}: ask the supplier for test reports on ${tests}.`,
          ),
        ],
  );
}
