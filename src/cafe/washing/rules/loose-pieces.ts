/** While pieces lie loose for want of a rack of a kind, the fullest part rack of that kind goes, to free it. */
import { NO_RACK, type LoadRule } from '../load-rule.js';

export function loosePieces(): LoadRule {
  return {
    name: 'loose pieces',
    next: ({ bench }) => {
      let best = NO_RACK;
      bench.openRack.forEach((rack, family) => {
        if (rack === NO_RACK || bench.looseOfKind[bench.kindOf[family]!] === 0) return;
        if (best === NO_RACK || fuller(bench.fill(rack), bench.firstPiece[rack]!, bench.fill(best), bench.firstPiece[best]!)) best = rack;
      });
      return best;
    },
  };
}

function fuller(fill: number, first: number, thanFill: number, thanFirst: number): boolean {
  return fill > thanFill || (fill === thanFill && first < thanFirst);
}
