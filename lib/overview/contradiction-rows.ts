import { contradictions } from '#lib/claims/contradictions';
import type { Judged } from '#lib/claims/judged';
import { oneLine } from '#lib/claims/sentence-around';
import type { Episode } from '#lib/episode/schema';
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
export function contradictionRows(
  judged: readonly Judged[],
  episode: Pick<Episode, 'segments' | 'region' | 'anythingElse'>,
): ContradictionRow[] {
  return contradictions(judged, episode).map(({ id, words, sides }) => ({
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
