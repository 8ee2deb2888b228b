/** While pieces lie loose for want of a rack of a kind, the fullest part rack of that kind goes, to free it; equally full: the one whose first piece reached the bench first. */
import { LoadRule, NO_RACK, type RuleEntry, type RuleView } from '../load-rule.js';

class LoosePieces extends LoadRule {
  readonly name = 'loose pieces';

  next({ bench }: RuleView): number {
    let best = NO_RACK;
    for (let family = 0; family < bench.openRack.length; family += 1) {
      const rack = bench.openRack[family]!;
      if (rack === NO_RACK || bench.looseOfKind[bench.kindOf[family]!] === 0) continue;
      if (best === NO_RACK) {
        best = rack;
        continue;
      }
      const ahead = bench.fuller(rack, best);
      if (ahead > 0 || (ahead === 0 && bench.firstPiece[rack]! < bench.firstPiece[best]!))
        best = rack;
    }
    return best;
  }
}

export const loosePieces: RuleEntry = {
  name: 'loose pieces',
  applies: (model) => model.rackKinds.some((kind) => kind.owned !== null),
  make: () => new LoosePieces(),
  looksAtShelf: false,
};
