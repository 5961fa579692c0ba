import type { Contradiction } from '#lib/claims/contradict/contradiction';
import { oneLine } from '#lib/claims/sentence-around';
import { placeWords } from '#lib/overview/said-rows';

/** Statements that cannot all hold, whatever the breakdown says, with all places at which they are. */
export interface ContradictionRow {
  readonly id: string;
  /** “half of 640 calories is 320, not 400”. */
  readonly words: string;
  readonly places: readonly ContradictionPlace[];
}

export interface ContradictionPlace {
  readonly id: string;
  /** '3:10'. */
  readonly words: string;
  readonly said: string;
}

/** What is said in two ways, in the words of the screen. */
export function contradictionRows(found: readonly Contradiction[]): ContradictionRow[] {
  return found.map(({ id, words, sides }) => ({
    id,
    words,
    places: sides.flatMap(({ said }) =>
      said.map(({ id: saidId, place, statement }) => ({
        id: saidId,
        words: placeWords(place),
        said: oneLine(statement.words),
      })),
    ),
  }));
}
