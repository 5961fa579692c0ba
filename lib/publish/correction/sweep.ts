import type { Piece } from '#lib/episode/publish-schema';
import { oldNumberWords, type OldNumber } from '#lib/publish/correction/old-numbers';

/** A copy of a text that went out. */
export interface TextOut {
  /** plain, markdown or html. */
  readonly form: string;
  /** The number of its lock. */
  readonly seq: number;
  /** The moment as read. */
  readonly at: string;
}

/** A saved reply that has numbers which were corrected since. */
export interface OldReply {
  readonly id: string;
  /** What the viewer wrote. */
  readonly comment: string;
  readonly old: readonly OldNumber[];
}

/** Where something that went out is made. */
export type SweepPlace =
  | { readonly kind: 'description'; readonly form: string }
  | { readonly kind: 'cards' }
  | { readonly kind: 'piece'; readonly id: string }
  | { readonly kind: 'reply'; readonly id: string };

/** Something that went out and may have to be put right. */
export interface SweepRow {
  readonly key: string;
  readonly what: string;
  /** Where it stands, in words. */
  readonly words: string;
  /** Null where the program cannot know: it never saw it go out. */
  readonly done: boolean | null;
  readonly place: SweepPlace;
}

const FORM_WORDS: Readonly<Record<string, string>> = {
  plain: 'The description',
  markdown: 'The description in Markdown',
  html: 'The description in HTML',
};

/**
 * What went out with older numbers, after a correction: each form of the description, of which it is known when it was
 * copied last, saved replies that have a number of before, and what was made from the episode, which the person looks
 * through.
 * @param seq the number of the lock that the last correction led to
 * @param texts copies, the last first
 */
export function sweep(
  seq: number,
  texts: readonly TextOut[],
  pieces: readonly Pick<Piece, 'id' | 'kind' | 'title'>[],
  replies: readonly OldReply[] = [],
): readonly SweepRow[] {
  const lastOfForm = new Map<string, TextOut>();
  for (const text of texts) if (!lastOfForm.has(text.form)) lastOfForm.set(text.form, text);
  return [
    ...[...lastOfForm.values()].map((text): SweepRow => {
      const done = text.seq >= seq;
      const words = done
        ? `copied ${text.at} with lock ${String(text.seq)}: put right`
        : `copied ${text.at} with lock ${String(text.seq)}, before the correction: copy it again`;
      const place = { kind: 'description', form: text.form } as const;
      return { key: text.form, what: FORM_WORDS[text.form] ?? text.form, words, done, place };
    }),
    ...replies.map(({ id, comment, old }): SweepRow => ({
      key: id,
      what: `The reply to “${beginning(comment)}”`,
      words: `says ${oldNumberWords(old)}: answer again`,
      done: false,
      place: { kind: 'reply', id },
    })),
    {
      key: 'cards',
      what: 'Cards in the video or under it',
      words: 'download them again where they show one of these numbers',
      done: null,
      place: { kind: 'cards' },
    },
    ...pieces.map(({ id, kind, title }): SweepRow => ({
      key: id,
      what: `${kind === 'clip' ? 'The clip' : 'The text'} “${title}”`,
      words: 'look at it where it went out, and put the correction under it',
      done: null,
      place: { kind: 'piece', id },
    })),
  ];
}

/** So much of a comment tells which one it is. */
const NAMED_BY = 60;

function beginning(comment: string): string {
  const line = comment.replace(/\s+/g, ' ').trim();
  return line.length <= NAMED_BY ? line : `${line.slice(0, NAMED_BY).trimEnd()}…`;
}
