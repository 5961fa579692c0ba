import type { Reply } from '#lib/episode/publish-schema';
import type { EpisodeFile } from '#lib/episode/schema';

/** Replies that explain the same, enough of them for a pinned comment. */
export interface PinnedOffer {
  readonly segmentId: string;
  readonly slip: string;
  readonly count: number;
  readonly text: string;
  /**
   * Whose numbers are in it. `now`: the saved reply's, and they are those that go out. `anew`: written anew with those
   * that go out, since the saved reply has others. `old`: the saved reply's, since what goes out now is no longer
   * explained by that difference.
   */
  readonly numbers: 'now' | 'anew' | 'old';
}

/** What a kept comment would be answered now. */
export interface AnswerNow {
  readonly draft: string;
  /** The difference that the draft tells; null where it tells none. */
  readonly slip: string | null;
  /** The number of the breakdown as it goes out; null where there is none. */
  readonly ours: string | null;
}

/** So many that are alike ask for one answer to all (as the person asked for it; no source). */
const ALIKE = 3;

/**
 * What to pin where several viewers came to another number by the same difference: the text of the latest reply, once, to
 * all, with the numbers that go out now. A dish that is gone has nothing to pin.
 * @param answerNow answers a comment once more; asked for the latest reply of each group only
 * @example three replies with the slip `fatLeftOut:oil` of one dish: one offer
 */
export function pinnedOffers(
  file: EpisodeFile,
  replies: readonly Reply[],
  answerNow: (reply: Reply) => AnswerNow,
): readonly PinnedOffer[] {
  const groups = new Map<string, Reply[]>();
  for (const reply of replies) {
    if (reply.slip === null || reply.segmentId === null) continue;
    const key = JSON.stringify([reply.segmentId, reply.slip]);
    groups.set(key, [...(groups.get(key) ?? []), reply]);
  }
  return [...groups.values()].flatMap((group) => {
    const latest = group.reduce((a, b) => (b.at > a.at ? b : a));
    const { segmentId, slip } = latest;
    const title = file.episode.segments.find(({ id }) => id === segmentId)?.title;
    if (group.length < ALIKE || segmentId === null || slip === null || title === undefined) {
      return [];
    }
    const { numbers, said } = pinned(latest, answerNow(latest));
    const text = `Several of you came to another number for ${title}. ${said.replace(/^Thanks for doing the sums\. /, '')}`;
    return [{ segmentId, slip, count: group.length, text, numbers }];
  });
}

function pinned(
  { text, slip }: Reply,
  now: AnswerNow,
): { readonly numbers: PinnedOffer['numbers']; readonly said: string } {
  // Asked first: where the breakdown is corrected to the viewers' number, the text has that number too, as theirs.
  if (now.slip !== slip || now.draft === '') return { numbers: 'old', said: text };
  if (now.ours !== null && hasNumber(text, now.ours)) return { numbers: 'now', said: text };
  return { numbers: 'anew', said: now.draft };
}

/** Whether a number stands in a text by itself, and not as a part of another one. */
function hasNumber(text: string, number: string): boolean {
  const literal = number.replace(/\./g, String.raw`\.`);
  return new RegExp(String.raw`(?<![\d.])${literal}(?!\d|\.\d)`).test(text);
}
