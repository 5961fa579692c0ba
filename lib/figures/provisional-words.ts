import type { ProvisionalPart } from '#lib/figures/figure';
import { someOf } from '#lib/figures/print-figure';

/** Why an ingredient is provisional, on screen and in what is copied. */
export const PROVISIONAL_WORDS: Readonly<Record<ProvisionalPart['why'], string>> = {
  match: 'not confirmed',
  photo: 'photographed, not typed yet',
};

/**
 * What ingredients wait for, those of one kind together.
 * @example provisionalWords(parts) // 'not confirmed yet: barley; photographed, not typed yet: oats'
 */
export function provisionalWords(parts: readonly Pick<ProvisionalPart, 'why' | 'text'>[]): string {
  return provisionalKinds({ provisional: parts })
    .map(({ why, words, texts }) => `${words}${why === 'match' ? ' yet' : ''}: ${someOf(texts)}`)
    .join('; ');
}

interface Kind {
  readonly why: ProvisionalPart['why'];
  readonly words: string;
  readonly texts: readonly string[];
}

/** What ingredients of a figure wait for, each kind with the words of those that do. */
export function provisionalKinds({
  provisional,
}: {
  readonly provisional: readonly Pick<ProvisionalPart, 'why' | 'text'>[];
}): Kind[] {
  return (['match', 'photo'] as const).flatMap((why) => {
    const own = provisional.filter((part) => part.why === why);
    const texts = [...new Set(own.map(({ text }) => text))];
    return texts.length === 0 ? [] : [{ why, words: PROVISIONAL_WORDS[why], texts }];
  });
}
