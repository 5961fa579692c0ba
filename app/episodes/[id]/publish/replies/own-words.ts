/** Words of the person's own in the field of a reply, and the draft that there was when they began. */
export interface OwnWords {
  readonly words: string;
  /** Null where the reply was saved and another draft was asked for since. */
  readonly from: string | null;
}

/**
 * What the field begins with: the saved reply as words of the person's own; null follows the draft.
 * @param asked whether something was put right of the reading, so that the draft answers that
 */
export function begunWith(saved: string, draft: string, asked: boolean): OwnWords | null {
  return saved === '' ? null : { words: saved, from: asked ? null : draft };
}

/** What is in the field after typing. */
export function typedOver(own: OwnWords | null, words: string, draft: string): OwnWords {
  return { words, from: own ? own.from : draft };
}

/**
 * What stands in the field, and the draft that is offered beside it: words of the person's own are never put over.
 * @example replyField({ words: 'Mine', from: 'first draft' }, 'second draft') // { words: 'Mine', offered: 'second draft' }
 */
export function replyField(
  own: OwnWords | null,
  draft: string,
): { readonly words: string; readonly offered: string | null } {
  if (own === null) return { words: draft, offered: null };
  const isNew = draft !== own.from && draft !== own.words;
  return { words: own.words, offered: isNew ? draft : null };
}
