import { beginsWithAmount } from './begins-with-amount';
import { listBelow, styleOf } from './heading';
import type { RowKind } from './row-kinds';
import { titleStems } from './same-title';
import { bareBody, type Row } from './text-rows';
import { withoutAsides, type AsideKind } from './title-asides';
import { ASKS, COOKED, DISH_PART, MEAL, METHOD, OTHER, WHOLE_NUMBERS } from './words';

/**
 * The kinds of lines, with those put right that are a dish's name with its portions, an amount or numbers beside it:
 * "Lentil salad (3 boxes)" reads as an ingredient and "Vanilla oats (505 kcal)" as numbers, but right below stands a
 * list of another form. A name it is where its mark, a chapter, its own words or another line like it say so as well;
 * where nothing does and it could be either, it is `unclear`.
 * @param chapters the names of the description’s chapters
 */
export function namedByAside(
  rows: readonly Row[],
  kinds: readonly RowKind[],
  chapters: ReadonlySet<string>,
): RowKind[] {
  const found = rows.map((_, at) => candidateAt(rows, kinds, at));
  const vessels = found.filter((each) => each?.aside === 'vessels').length;
  return kinds.map((kind, at) => {
    const candidate = found[at];
    if (!candidate) return kind;
    const sure = candidate.isMarked || chapters.has(nameKey(candidate.title));
    const { aside, title } = candidate;
    const last = titleStems(title).at(-1) ?? '';
    const named = aside === 'vessels' && (vessels > 1 || COOKED.has(last));
    if (sure || aside === 'portions' || aside === 'numbers' || named) return { kind: 'words' };
    const either = aside === 'vessels' || COOKED.has(last) || DISH_PART.test(title.toLowerCase());
    return either ? { kind: 'unclear' } : kind;
  });
}

/** A name by which two titles are held to be the same: their words in any order. */
export function nameKey(title: string): string {
  return titleStems(title).sort().join(' ');
}

/** The names of the chapters of a description. */
export function chapterNames(kinds: readonly RowKind[]): ReadonlySet<string> {
  return new Set(
    kinds.flatMap((kind) => (kind.kind === 'chapter' ? [nameKey(kind.chapter.title)] : [])),
  );
}

interface Candidate {
  readonly title: string;
  readonly aside: AsideKind;
  readonly isMarked: boolean;
}

const STRONGEST: readonly AsideKind[] = ['portions', 'vessels', 'amount', 'numbers'];
const MOST_WORDS = 10;

/** A line of words with something beside them, at the head of a list that is written in another form. */
function candidateAt(
  rows: readonly Row[],
  kinds: readonly RowKind[],
  at: number,
): Candidate | null {
  const [row, kind] = [rows[at], kinds[at]?.kind];
  if (!row || row.lead === 'bullet' || row.text.length > 160) return null;
  if (kind !== 'amount' && kind !== 'numbers' && kind !== 'inline') return null;
  const { text, asides } = withoutAsides(bareBody(row));
  const aside = STRONGEST.find((each) => asides.includes(each));
  const title = text.trim();
  if (!aside || beginsWithAmount(title) || title.split(/\s+/).length > MOST_WORDS) return null;
  const folded = title.toLowerCase();
  if (
    !/\p{L}{2}/u.test(title) ||
    [ASKS, OTHER, METHOD, WHOLE_NUMBERS].some((no) => no.test(folded))
  )
    return null;
  const style = styleOf(row, kinds[at + 1], title);
  const isSet = (style !== 'plain' && style !== 'capitals') || MEAL.test(folded);
  if (!isSet && !beginsBlock(rows, kinds, at)) return null;
  const below = listBelow(kinds, at);
  if (below === null || (below === 'near' && style === 'plain')) return null;
  const list = linesBelow(rows, kinds, at);
  const alike = list.filter((line) => isAlike(line, aside));
  if (list.length > 0 && (alike.includes(list[0] as Row) || alike.length * 2 > list.length))
    return null;
  return { title, aside, isMarked: isMarked(row, style, list) };
}

/** The first line, or one below a blank line, a rule, chapters or numbers. */
function beginsBlock(rows: readonly Row[], kinds: readonly RowKind[], at: number): boolean {
  const above = kinds[at - 1]?.kind;
  if (above === 'numbers') return WHOLE_NUMBERS.test(rows[at - 1]?.folded ?? '');
  if (above === 'blank') {
    let last = at - 1;
    while (kinds[last]?.kind === 'blank') last -= 1;
    return kinds[last]?.kind !== 'ingredientsLabel' && kinds[last]?.kind !== 'methodLabel';
  }
  return above === undefined || /^(?:rule|chapter|chaptersLabel|hashtags|links|heat)$/.test(above);
}

/** Lines of ingredients of the list below, until it ends. */
function linesBelow(rows: readonly Row[], kinds: readonly RowKind[], at: number): Row[] {
  const lines: Row[] = [];
  for (let next = at + 1; next < rows.length && next - at <= REACH; next += 1) {
    const kind = kinds[next]?.kind;
    const row = rows[next];
    if (kind === 'blank' && lines.length > 0) break;
    if (row && (kind === 'amount' || (kind === 'numbers' && lines.length > 0))) lines.push(row);
  }
  return lines;
}

const REACH = 30;

/** Whether a line has its amount or its numbers where a name has them: behind its words. */
function isAlike(row: Row, aside: AsideKind): boolean {
  const { asides } = withoutAsides(row.body);
  if (aside === 'numbers') return asides.includes('numbers');
  return asides.length > 0 && !beginsWithAmount(row.body);
}

/** Whether a line has a mark that the lines below it do not have. */
function isMarked(row: Row, style: ReturnType<typeof styleOf>, list: readonly Row[]): boolean {
  const noneHas = (has: (line: Row) => boolean) => list.length > 0 && !list.some(has);
  if (style === 'capitals') return noneHas(({ body }) => !/\p{Ll}/u.test(body));
  if (row.lead === 'picture') return noneHas(({ lead }) => lead === 'picture');
  if (row.lead === 'number') return noneHas(({ lead }) => lead === 'number');
  if (style !== 'plain') return true;
  return list.length > 0 && list.every(({ lead }) => lead === 'bullet');
}
