import { printCount } from '#lib/units/print';
import type { ZipProgress } from './zip-progress';

/** How far a zip is, in words; `failed` where the person has to begin it again. */
export interface ZipTold {
  readonly words: string;
  readonly failed: boolean;
}

export const BEGUN: ZipTold = { words: 'Drawing the cards …', failed: false };

export const NO_ANSWER: ZipTold = {
  words:
    'The program does not answer, so how far it is can’t be told. Look whether the zip was saved; if not, start it again.',
  failed: true,
};

/** @example zipWords({ drawn: 20, of: 20, over: true }).words // 'All 20 cards are drawn.' */
export function zipWords({ drawn, of, over }: ZipProgress): ZipTold {
  if (!over) {
    return of === 0
      ? BEGUN
      : { words: `${printCount(drawn)} of ${printCount(of)} cards drawn`, failed: false };
  }
  if (of === 0) return { words: `The zip could not be made. ${AGAIN}`, failed: true };
  if (drawn >= of) return { words: `All ${printCount(of)} cards are drawn.`, failed: false };
  return {
    words: `The download ended after ${printCount(drawn)} of ${printCount(of)} cards: what was saved is not whole. ${AGAIN}`,
    failed: true,
  };
}

const AGAIN = 'Start it again, or take the cards one by one below.';
