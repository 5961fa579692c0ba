import { cleanTitle } from './clean-title';
import type { SaidPortions } from './portions-said';
import type { RowKind } from './row-kinds';
import { bareBody, foldRow, type Row } from './text-rows';
import { withoutAsides, type AsideKind } from './title-asides';
import { ASKS, DISH_PART, ELSEWHERE, MEAL, OTHER, PART } from './words';

/** How a heading is marked. Headings of one description that name dishes are marked alike. */
export type HeadingStyle =
  | 'hash'
  | 'deepHash'
  | 'bold'
  | 'underlined'
  | 'capitals'
  | 'decorated'
  | 'numbered'
  | 'colon'
  | 'picture'
  | 'plain';

/** A line that names what follows it; a `quiet` one ends what was before and says nothing else. */
export interface Heading {
  readonly role: 'dish' | 'part' | 'other' | 'list' | 'quiet';
  readonly style: HeadingStyle;
  readonly title: string;
  readonly portions: SaidPortions | null;
  /** What else is said beside the title. */
  readonly asides: readonly AsideKind[];
}

/** Words of a heading at most (common practice, no source). */
const MOST_WORDS = 10;
/** "Here's what I used": no name of a dish. */
const SENTENCE = /\b(?:i|i'm|i've|i'll|you|your|we|here|here's|this|these)\b/;
const WHOLE =
  /^(?:the |full |my )*(?:recipes?|what i (?:ate|eat|made|cooked)(?: in a day)?|meals?|menu|food)$/;

/**
 * The heading that a line is, by its marks and by what stands below it; null where it is none. A line of plain words is
 * one only where its list, its portions or its label follow at once.
 * @param isChapter whether a chapter is called so: what could be a part of a dish is a dish then
 */
export function headingAt(
  rows: readonly Row[],
  kinds: readonly RowKind[],
  at: number,
  isChapter: (title: string) => boolean = () => false,
): Heading | null {
  const row = rows[at];
  if (!row || row.text.length > 160) return null;
  const bare = withoutAsides(bareBody(row));
  const style = styleOf(row, kinds[at + 1], bare.text);
  const title = cleanTitle(bare.text);
  const folded = foldRow(title);
  const count = title.split(/\s+/).length;
  if (!/\p{L}{2}/u.test(title) || count > MOST_WORDS || ASKS.test(folded)) return null;
  const common = { style, title, portions: bare.portions, asides: bare.asides };
  const below = listBelow(kinds, at);
  const colon = /:\s*$/.test(bare.text);
  const ownDish = DISH_PART.test(folded) && (hasYield(bare.asides) || isChapter(title));
  if (!ownDish && PART.test(folded) && (style !== 'plain' || below === 'at once'))
    return { ...common, role: 'part' };
  if (WHOLE.test(folded)) return style === 'plain' ? null : { ...common, role: 'quiet' };
  if (MEAL.test(folded) && below !== 'at once') return { ...common, role: 'quiet' };
  if (ELSEWHERE.test(folded)) return null;
  if (SENTENCE.test(folded))
    return below === 'at once' && (colon || style !== 'plain') ? { ...common, role: 'list' } : null;
  if (OTHER.test(folded) && (style !== 'plain' || count <= 4)) return { ...common, role: 'other' };
  if (/[.!?]$/.test(bare.text.trim()) && style === 'plain') return null;
  const near = style === 'plain' ? below === 'at once' : below !== null;
  if (near) return { ...common, role: 'dish' };
  return style === 'plain' || style === 'picture' || style === 'numbered' || style === 'colon'
    ? null
    : { ...common, role: 'other' };
}

const hasYield = (asides: readonly AsideKind[]) => asides.some((aside) => aside !== 'numbers');

/** How a line is marked, by its own signs, by its title in capitals and by a rule below it. */
export function styleOf(
  { text, body, lead }: Row,
  below: RowKind | undefined,
  title: string,
): HeadingStyle {
  if (/^#{1,2}\s/.test(body)) return 'hash';
  if (/^#{3,6}\s/.test(body)) return 'deepHash';
  if (/^(\*\*|__)[^*_]+\1:?$/.test(text)) return 'bold';
  if (/^(?:recipe|dish|meal)\s*\d{1,2}\s*[:.)–—-]/i.test(body)) return 'numbered';
  if (below?.kind === 'rule') return 'underlined';
  if (/\p{Lu}{3}/u.test(title) && !/\p{Ll}/u.test(title)) return 'capitals';
  if (/^[=~*★⭐✨•—–-]+\s*\S.*\S\s*[=~*★⭐✨•—–-]+$/u.test(text)) return 'decorated';
  if (body.endsWith(':')) return 'colon';
  return lead === 'picture' ? 'picture' : 'plain';
}

/** Lines between a heading and its list at most: a remark, portions, numbers. */
const REACH = 4;

/** Whether a list of ingredients or a method stands below a heading: right below it, a little further on, or not. */
export function listBelow(kinds: readonly RowKind[], at: number): 'at once' | 'near' | null {
  let blanks = 0;
  let words = 0;
  for (let next = at + 1; next < kinds.length && next - at <= REACH + 4; next += 1) {
    const kind = kinds[next]?.kind;
    if (kind === 'rule' || kind === 'numbers' || kind === 'allergens' || kind === 'heat') continue;
    if (kind === 'blank') {
      blanks += 1;
      if (blanks > 2) return null;
      continue;
    }
    if (kind === 'ingredientsLabel' || kind === 'methodLabel' || kind === 'portions')
      return words === 0 ? 'at once' : 'near';
    if (kind === 'amount' || kind === 'table')
      return words === 0 && blanks === 0 ? 'at once' : 'near';
    if (kind !== 'words') return null;
    words += 1;
    if (words > 2) return null;
  }
  return null;
}
