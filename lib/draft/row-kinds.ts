import { chapterRow, type ChapterRow } from './chapter-row';
import { ingredientRow, saysNumbers } from './ingredient-row';
import { heatLine } from './heat-line';
import { hasAmount, isList, listPieces } from './list-pieces';
import { isNumbersRow } from './numbers-row';
import { readPortions, withoutPortions, type SaidPortions } from './portions-said';
import { tableRows, type TableRow } from './table-rows';
import { foldRow, type Row } from './text-rows';
import { ALLERGENS, CHAPTERS, DISCLOSURE, INGREDIENTS, METHOD, NAMED_INGREDIENTS } from './words';

/** What a line of a description is by its own words; `words` is whatever could not be told. */
export type RowKind =
  | { readonly kind: 'blank' | 'rule' | 'hashtags' | 'links' | 'disclosure' | 'allergens' }
  /** The name of a dish or an ingredient, and nothing says which. */
  | { readonly kind: 'unclear' }
  | { readonly kind: 'numbers' | 'chaptersLabel' | 'amount' | 'words' }
  | { readonly kind: 'chapter'; readonly chapter: ChapterRow }
  /** `rest`: the words behind the label; `title`: the dish that it names. */
  | {
      readonly kind: 'ingredientsLabel';
      readonly rest: string;
      readonly title: string;
      readonly portions: SaidPortions | null;
    }
  | { readonly kind: 'methodLabel'; readonly rest: string }
  | { readonly kind: 'portions'; readonly portions: SaidPortions }
  /** How hot and how long, without a food: a step, or a time that the dish is said to take. */
  | { readonly kind: 'heat'; readonly says: 'step' | 'time' }
  | { readonly kind: 'table'; readonly table: TableRow }
  /** A heading and its list on one line. */
  | {
      readonly kind: 'inline';
      readonly head: string;
      readonly pieces: readonly string[];
      readonly portions: SaidPortions | null;
    };

/** The kinds of all lines, in their order. The work is in proportion to the text. */
export function rowKinds(rows: readonly Row[]): RowKind[] {
  const tables = tableRows(rows);
  return rows.map((row, index) => {
    const table = tables.get(index);
    return table ? { kind: 'table', table } : kindOf(row);
  });
}

/** No letter and no number: a line that parts others, or pictures alone. */
const RULE = /^[^\p{L}\p{N}]*$/u;
/** A longer line is no label, heading, list or ingredient; only prose and what is looked for anywhere in it. */
const LONGEST = 2000;

function kindOf(row: Row): RowKind {
  const { text, body, folded } = row;
  if (text === '' || body === '') return { kind: 'blank' };
  if (RULE.test(text)) return { kind: 'rule' };
  if (text.length > LONGEST)
    return { kind: DISCLOSURE.test(folded.slice(0, LONGEST)) ? 'disclosure' : 'words' };
  if (/^(?:#[\p{L}\d_]+[\s,]*)+$/u.test(text)) return { kind: 'hashtags' };
  const link = /\bhttps?:\/\/\S|\bwww\.\S/i.test(text);
  if (DISCLOSURE.test(folded) && (!link || folded.length > 80)) return { kind: 'disclosure' };
  if (link) return { kind: 'links' };
  const chapter = chapterRow(row);
  if (chapter) return { kind: 'chapter', chapter };
  if (ALLERGENS.test(folded)) return { kind: 'allergens' };
  if (CHAPTERS.test(folded)) return { kind: 'chaptersLabel' };
  const portions = portionsOf(folded);
  if (portions !== null) return { kind: 'portions', portions };
  if (isNumbersRow(folded)) return { kind: 'numbers' };
  const label = labelOf(row);
  if (label) return label;
  const says = heatLine(row);
  return says ? { kind: 'heat', says } : (listed(row) ?? { kind: 'words' });
}

/** The portions that a line states, with or without numbers of them behind: "Makes 10 slices, 271 kcal each". */
function portionsOf(folded: string): SaidPortions | null {
  const [, first = '', behind = ''] = /^([^,;|•·]{1,60}?)\s*[,;|•·]\s*(.+)$/u.exec(folded) ?? [];
  return readPortions(folded) ?? (isNumbersRow(behind) ? readPortions(first) : null);
}

function labelOf({ body }: Row): RowKind | null {
  const bare = withoutPortions(body.replace(/[*_#]+/g, ' ').trim());
  const folded = foldRow(bare.text);
  const { portions } = bare;
  const named = NAMED_INGREDIENTS.exec(folded);
  const label = INGREDIENTS.exec(folded);
  if (label) {
    const rest = (label[1] ?? '').replace(/^[\s:–—-]+/, '');
    if (rest !== '' && !bare.text.toLowerCase().endsWith(rest)) return null;
    const words = rest === '' ? '' : bare.text.slice(bare.text.length - rest.length);
    return { kind: 'ingredientsLabel', rest: words, title: '', portions };
  }
  if (named && bare.text.length === folded.length) {
    const title = bare.text.slice(0, (named[1] ?? '').length);
    return { kind: 'ingredientsLabel', rest: '', title, portions };
  }
  const method = METHOD.exec(folded);
  if (!method) return null;
  const rest = method[1] ?? '';
  return { kind: 'methodLabel', rest: rest === '' ? '' : bare.text.slice(-rest.length) };
}

/** The last sign between words and a list that stands before its first number. */
const HEAD_AND_LIST = /^(\D{2,80})(?::|\s[-–—=])\s+(.+)$/;

/** An ingredient, a heading with its list, or numbers of nutrients. */
function listed(row: Row): RowKind | null {
  const { body, folded } = row;
  if (/^(?:macros?|nutrition|calories|kcal|totals?|per )/.test(folded) && saysNumbers(folded))
    return { kind: 'numbers' };
  const { text, portions } = withoutPortions(body);
  // "Cottage cheese pancakes (1 serving)" is a dish and no amount of one.
  if (portions !== null && !/^[\d½¼¾⅓⅔]/.test(body) && !/\d/.test(text)) return null;
  const [, head = '', list = ''] = HEAD_AND_LIST.exec(text) ?? [];
  const headed = list !== '' && !/\d/.test(head) && !saysNumbers(foldRow(list));
  const pieces = headed ? listPieces(list) : [];
  if (isList(pieces)) return { kind: 'inline', head, pieces, portions };
  if (ingredientRow(row.ingredient)) return { kind: 'amount' };
  if (headed && pieces.length === 1 && hasAmount(list))
    return { kind: 'inline', head, pieces, portions };
  return saysNumbers(folded) ? { kind: 'numbers' } : null;
}
