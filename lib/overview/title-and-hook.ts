import type { EditFacts } from '#lib/claims/edit-facts';
import type { NumbersFor } from '#lib/claims/judge/judge-context';
import { readEdit } from '#lib/claims/read-edit';
import { USUAL_WORDS_PER_MINUTE } from '#lib/cut/speaking-rate';
import type { EditText } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { saidRow, type SaidRow } from '#lib/overview/said-rows';

/** A statement of the episode's title or hook that does not stand as it is written. */
export interface PromiseRow extends Pick<
  SaidRow,
  'words' | 'standing' | 'verdict' | 'why' | 'sayInstead' | 'remark'
> {
  /** Names it among the others. */
  readonly key: string;
  readonly in: 'title' | 'hook';
}

/**
 * What title and hook promise and the numbers that go out do not bear out: what is off first, then what is at the edge
 * and what nobody can say. Both are read and judged as a title of the edit is; what agrees is not among them.
 * @param file the episode as its numbers go out
 * @param numbersFor the numbers that go out; those of the file if left out
 * @example promiseRows(file, facts)[0]?.verdict // 'off by 12 g protein'
 */
export function promiseRows(
  file: EpisodeFile,
  facts: EditFacts,
  numbersFor?: NumbersFor,
): readonly PromiseRow[] {
  const { episode, creator } = file;
  const texts = PLACES.flatMap((kind): EditText[] =>
    episode[kind].trim() === ''
      ? []
      : [{ id: kind, kind: 'title', name: kind, text: episode[kind] }],
  );
  const segments = episode.segments.map((each) => ({ ...each, talkingPoints: [] }));
  const edit = { texts, mends: [], named: [] };
  const { judged } = readEdit(
    { ...file, edit, episode: { ...episode, segments } },
    facts,
    numbersFor,
  );
  const of = {
    file: { episode, edit, creator },
    texts: new Map(texts.map(({ id, text }) => [id, text])),
    perMinute: creator.wordsPerMinute ?? USUAL_WORDS_PER_MINUTE,
  };
  return judged
    .filter(({ verdict }) => verdict !== 'agrees')
    .map((each): PromiseRow => {
      const { words, standing, verdict, why, sayInstead, remark } = saidRow(each, of);
      const place = each.place.textId === 'hook' ? 'hook' : 'title';
      return { key: each.id, in: place, words, standing, verdict, why, sayInstead, remark };
    })
    .sort((a, b) => RANK.indexOf(a.standing) - RANK.indexOf(b.standing));
}

const PLACES = ['title', 'hook'] as const;
const RANK: readonly SaidRow['standing'][] = ['off', 'edge', 'unknown'];
