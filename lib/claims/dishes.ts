import type { Text } from './text';

/** A dish that is named: its title, or null for the one that is talked about. */
export interface DishMention {
  readonly from: number;
  readonly to: number;
  readonly title: string | null;
}

interface Title {
  readonly title: string;
  readonly stems: readonly string[];
  readonly head: string;
}

/**
 * Where dishes are named: by the last word of the title with others of it before, or by that word alone where no other
 * dish has it and it is no word for a part.
 */
export function dishMentions(text: Text): DishMention[] {
  const { context, language, tokens, marks } = text;
  const titles = (context.dishes ?? []).map((title): Title => {
    const stems = title
      .toLowerCase()
      .split(/[^\p{L}\d]+/u)
      .filter(Boolean)
      .map(language.singular);
    return { title, stems, head: stems.at(-1) ?? '' };
  });
  if (titles.length < 2) return [];
  const byHead = new Map<string, Title[]>();
  for (const title of titles) byHead.set(title.head, [...(byHead.get(title.head) ?? []), title]);
  const found: DishMention[] = [];
  tokens.forEach((token, at) => {
    const candidates = byHead.get(language.singular(token.folded));
    if (!candidates) return;
    const best = candidates
      .map((title) => ({ title, words: wordsBefore(text, at, title) }))
      .sort((a, b) => b.words - a.words);
    const [first, second] = best;
    if (!first || (second && second.words === first.words)) return;
    if (first.words === 0 && (marks.at('thing', at) || marks.at('unit', at))) return;
    const title = first.title.title === context.dish ? null : first.title.title;
    found.push({ from: at - first.words, to: at + 1, title });
  });
  return found;
}

function wordsBefore({ tokens, language }: Text, at: number, { stems }: Title): number {
  let words = 0;
  while (stems.includes(language.singular(tokens[at - words - 1]?.folded ?? ''))) words += 1;
  return Math.min(words, stems.length - 1);
}

/** The dish that each token's numbers are of: the one named last in the sentence, or in speech before it. */
export function dishAt(text: Text, mentions: readonly DishMention[], at: number): string | null {
  let low = 0;
  let high = mentions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((mentions[middle]?.from ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  const last = mentions[low - 1];
  if (!last) return null;
  const { sentences, spoken } = text;
  if (!spoken && sentences.of[last.from] !== sentences.of[at]) return null;
  return at - last.from < 60 ? last.title : null;
}
