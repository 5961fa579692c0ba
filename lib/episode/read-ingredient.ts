import type { Problem } from '#lib/result';
import { MOST } from '#lib/episode/most';
import { bulletLength, withoutMarkup, withoutUnseen } from '#lib/episode/read-ingredient-clean';
import { remark } from '#lib/episode/read-ingredient-number';
import { orderLine, type OrderedLine } from '#lib/episode/read-ingredient-order';
import { seasoningCuts, withoutSign } from '#lib/episode/read-ingredient-seasonings';
import { readPart, singularName, type ReadPart } from '#lib/episode/read-ingredient-part';
import { plainWidth, textOf, tokenize } from '#lib/episode/read-ingredient-tokens';
import type {
  ReadIngredient,
  ReadIngredientList,
  ReadLine,
} from '#lib/episode/read-ingredient-types';

/** Letters that an ingredient's text holds at most, as in the file format. */
export const LONGEST_LINE = 400;
/** A longer line is not read at all. */
const LONGEST_READ = 2000;
/** Ingredients that a dish holds at most, as in the file format. */
export const MOST_INGREDIENTS = MOST.ingredients;

/**
 * Reads an ingredient as a person writes it into amount, unit, food, state and note. Most lines are one part;
 * '1 egg + 2 whites' is two. In doubt the amount is null and a remark says why; no word is lost: the parts'
 * texts together are the line without its bullet.
 *
 * @example readIngredient('2 x 400 g tins butter beans, drained')
 *   // 2 pack (tin), food 'butter beans', state drained, grams null: the net weight holds the liquid too
 */
export function readIngredient(text: string): readonly ReadIngredient[] {
  const seen = withoutUnseen(text);
  return readSeen(seen.text, seen.removed > 0 ? [unseenRemark(seen.removed)] : [], seen.overridden);
}

/** Reads a line without unseen signs; `found` is what was remarked of it before. */
function readSeen(
  text: string,
  found: readonly Problem[],
  overridden: boolean,
): readonly ReadIngredient[] {
  const flat = text.replace(/[\r\n\u2028\u2029\t\v\f\u0085]+/g, ' ');
  const line = flat.slice(bulletLength(flat)).trim();
  if (line === '') return [];
  const long = line.length > LONGEST_LINE ? [tooLong(line.length)] : [];
  if (line.length > LONGEST_READ) return [whole(line, [...found, ...long])];
  const first = [...found, ...long, ...(overridden ? [OVERRIDDEN] : [])];
  return partsOf(line).map((part, index) => ({
    ...part,
    quantity: overridden ? null : part.quantity,
    grams: overridden ? null : part.grams,
    weight: overridden ? null : part.weight,
    remarks: index === 0 ? [...first, ...part.remarks] : part.remarks,
  }));
}

const OVERRIDDEN = remark(
  'direction-override',
  'Marks in this text show it backwards, so that it may not say what is seen. Type the amount again.',
);

function unseenRemark(count: number): Problem {
  return remark(
    'unseen-signs',
    `${count} ${count === 1 ? 'sign' : 'signs'} that cannot be seen ${count === 1 ? 'was' : 'were'} taken out.`,
    { count },
  );
}

function tooLong(length: number): Problem {
  return remark(
    'too-long',
    `This line has ${length} letters; an ingredient holds ${LONGEST_LINE}. Write each on a line of its own.`,
    { length, longest: LONGEST_LINE },
  );
}

/** A line of which nothing is read. */
function whole(text: string, remarks: readonly Problem[]): ReadIngredient {
  return {
    text,
    quantity: null,
    unit: null,
    measure: null,
    grams: null,
    weight: null,
    food: text,
    state: null,
    note: '',
    household: '',
    remarks,
  };
}

function partsOf(line: string): readonly ReadIngredient[] {
  const cuts = seasoningCuts(line);
  if (cuts.length === 0) return partsInside(line);
  const toTaste = /\bto (?:taste|season)\)?\s*$/i.test(line);
  return [0, ...cuts].flatMap((from, index) => {
    const text = line.slice(from, cuts[index] ?? line.length).trim();
    const [part] = partsInside(withoutSign(text));
    return part ? [{ ...(toTaste ? seasoned(part) : part), text }] : [];
  });
}

/** 'salt + pepper to taste': what is said behind the last is said of each. */
function seasoned(part: ReadIngredient): ReadIngredient {
  if (part.quantity !== null || part.note !== '') return part;
  const remarks = part.remarks.filter(({ code }) => code !== 'no-amount');
  return { ...part, note: 'to taste', remarks };
}

function partsInside(line: string): readonly ReadIngredient[] {
  const ordered = orderLine(tokenize(plainWidth(line)));
  const { tokens, brackets } = ordered;
  const read: { part: ReadPart; from: number }[] = [];
  let from = 0;
  let before = '';
  while (from < tokens.length || read.length === 0) {
    const start = read.length === 0 ? 0 : from + 1;
    const part = readPart(tokens, start, brackets, before);
    read.push({ part, from });
    before = singularEnd(part.part.food);
    if (part.next <= from) break;
    from = part.next;
  }
  const cuts = ordered.turned || ordered.partOf !== '' ? read.slice(0, 1) : read;
  const starts = cuts.map(({ from: at }, index) => (index === 0 ? 0 : (tokens[at]?.start ?? 0)));
  return cuts.map(({ part }, index) => {
    const text = line.slice(starts[index], starts[index + 1] ?? line.length).trim();
    return { text, ...withPart(part, ordered), household: household(line, ordered, part) };
  });
}

/** The food for a bare 'whites' behind it: '2 eggs' → 'egg'. */
function singularEnd(food: string): string {
  return /^eggs$/i.test(food) ? singularName(food) : food;
}

function household(line: string, { tokens }: OrderedLine, { amount }: ReadPart): string {
  const first = amount ? tokens[amount.from] : undefined;
  const last = amount ? tokens[amount.next - 1] : undefined;
  return first && last && last.end > first.start ? line.slice(first.start, last.end) : '';
}

/** 'juice of 1 lemon': one piece, measure lemon, food lemon juice. */
function withPart({ part }: ReadPart, { partOf, preparation }: OrderedLine): ReadPart['part'] {
  if (partOf === '') return part;
  const note = [textOf(preparation), part.note].filter((text) => text !== '').join(', ');
  const thing = singularName(part.food.toLowerCase());
  const food = part.food === '' ? partOf : `${thing} ${partOf}`;
  if (part.quantity === null || part.unit !== 'piece') return { ...part, food, note };
  const egg = /^(?:whites?|yolks?)/.test(partOf);
  const size = part.measure === null || egg ? [] : [part.measure];
  const said = [...size, note].filter((text) => text !== '').join(', ');
  return { ...part, food, note: said, measure: egg ? part.measure : thing };
}

const HEADING = /^(?:ingredients|method|for the [^\d,½¼¾⅓⅔]{1,60})$/i;

/**
 * Reads a whole pasted list, one ingredient a line. Markup is cleaned away, blank lines are dropped, headings
 * kept apart. Time is linear in the length of the text; what does not fit comes back unread in `rest`.
 *
 * @param most how many ingredients are taken, at most
 */
export function readIngredientList(
  text: string,
  most: number = MOST_INGREDIENTS,
): ReadIngredientList {
  const markup = withoutMarkup(text);
  const seen = withoutUnseen(markup.text);
  const rows = seen.text.split(LINE_BREAK);
  const overridden = seen.overridden ? overriddenRows(markup.text) : new Set<number>();
  const lines: ReadLine[] = [];
  const headings: { at: number; text: string }[] = [];
  const rest: string[] = [];
  const remarks: Problem[] = [];
  if (markup.tags > 0) {
    remarks.push(
      remark('markup-removed', 'Markup was taken out; the words stayed.', { tags: markup.tags }),
    );
  }
  if (seen.removed > 0) remarks.push(unseenRemark(seen.removed));
  let count = 0;
  let full = 0;
  rows.forEach((row, index) => {
    const at = index + 1;
    const line = row.trim();
    if (line === '') return;
    if (full > 0) {
      rest.push(row);
      return;
    }
    if (line.length > LONGEST_LINE) {
      rest.push(row);
      remarks.push({ ...tooLong(line.length), path: `line ${at}` });
      return;
    }
    const name = headingOf(line);
    if (name !== null) {
      headings.push({ at, text: name });
      return;
    }
    const parts = readSeen(line, [], overridden.has(index));
    if (parts.length === 0) return;
    if (count + parts.length > most) {
      full = at;
      rest.push(row);
      return;
    }
    count += parts.length;
    lines.push({ at, text: parts.map((part) => part.text).join(' '), parts });
  });
  if (full > 0) remarks.push(tooMany(most, full, rest.length));
  return { lines, headings, rest: rest.join('\n'), remarks };
}

const LINE_BREAK = /\r\n|[\n\r\v\f\u0085\u2028\u2029]/;

/** The lines that direction marks turn round, counted from 0. */
function overriddenRows(text: string): ReadonlySet<number> {
  const rows = text.split(LINE_BREAK);
  return new Set(rows.flatMap((row, index) => (withoutUnseen(row).overridden ? [index] : [])));
}

function tooMany(most: number, from: number, left: number): Problem {
  return {
    path: `line ${from}`,
    code: 'too-many-lines',
    message: `A dish holds ${most} ingredients. What is left from line ${from} on was not read: ${left} lines.`,
    facts: { most, from, left },
  };
}

/** The name that a heading gives, as written; null where the line is an ingredient. */
function headingOf(line: string): string | null {
  const marked = /^#{1,6}\s/.test(line) || /^\*\*[^*]{1,100}\*\*:?$/.test(line);
  const plain = line.slice(bulletLength(line)).replaceAll('*', '').trim();
  const colon = plain.endsWith(':') && !/[\d½¼¾⅓⅔]/.test(plain);
  return marked || colon || HEADING.test(plain) ? plain : null;
}
