/** While pieces lie loose for want of a rack of a kind, the fullest part rack of that kind goes, to free it. */
import { NO_RACK, type LoadRule, type Yard } from '../load-rule.js';

export class LoosePieces implements LoadRule {
  readonly name = 'loose pieces';

  next({ bench }: Yard): number {
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
