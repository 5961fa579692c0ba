import { readStatements } from '#lib/claims/read-statements';
import type { Scope, Statement } from '#lib/claims/statement';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { settled } from '#lib/units/print';

/** A number that a viewer's comment may be about, as it was read. */
export interface CommentNumber {
  readonly nutrient: Nutrient;
  /** In the nutrient's unit. */
  readonly amount: number;
  /** Digits behind the point, as written. */
  readonly decimals: number;
  readonly about: boolean;
  /** Of what, as far as the comment says. */
  readonly of: 'whole' | 'portion' | 'day' | null;
  /** Title of the dish that it names; null where it names none. */
  readonly dish: string | null;
  /** As it stands in the comment. */
  readonly words: string;
  /** Whether the comment says what is counted; a bare number is taken for calories. */
  readonly named: boolean;
}

/** A bare number of so much is taken for calories, if anything: smaller ones count pieces, minutes and days. */
const LEAST_BARE = 50;
/** A comment is short; what is longer is read as far as this. */
const LONGEST = 4000;

/**
 * The numbers of a comment that may be the viewer's own, in the order of the text, those of energy first, those that
 * name no unit last.
 * @param dishes titles of the episode's dishes
 * @example readComment('I get 712 calories a portion, not 640', ['Skillet'])[0].amount // 712
 */
export function readComment(comment: string, dishes: readonly string[]): readonly CommentNumber[] {
  const text = comment.slice(0, LONGEST);
  const statements = readStatements(text, { form: 'comment', dishes });
  const told = statements.flatMap((each) => numberOf(each));
  const isEnergy = ({ nutrient }: CommentNumber) => nutrient.startsWith('energy');
  return [
    ...told.filter(isEnergy),
    ...told.filter((each) => !isEnergy(each)),
    ...bareNumbers(text, statements),
  ];
}

/** So many grams are one of a unit. */
const GRAMS: Readonly<Record<string, number>> = { g: 1, mg: 1e-3, µg: 1e-6 };

function numberOf(statement: Statement): CommentNumber[] {
  if (statement.kind !== 'nutrient' || statement.against !== undefined) return [];
  const { nutrient, unit, low, high, hedge, words, scope } = statement;
  const own = NUTRIENTS[nutrient].unit;
  const [from, to] = [GRAMS[unit], GRAMS[own]];
  const times = unit === own ? 1 : from !== undefined && to !== undefined ? from / to : null;
  if (times === null || !(high > 0)) return [];
  const amount = settled(((low + high) / 2) * times);
  return [
    {
      ...{ nutrient, amount, words },
      decimals: decimalsOf(words, amount),
      about: hedge !== 'none' || low !== high,
      of: OF[scope] ?? null,
      dish: statement.dish ?? null,
      named: true,
    },
  ];
}

const OF: Partial<Readonly<Record<Scope, CommentNumber['of']>>> = {
  whole: 'whole',
  portion: 'portion',
  each: 'portion',
  day: 'day',
};

/** Digits behind the point as they were written, a 0 among them too. */
function decimalsOf(words: string, amount: number): number {
  const written = /\d\.(\d{1,3})(?!\d)/.exec(words)?.[1];
  if (written !== undefined && Number.isInteger(settled(amount * 10 ** written.length))) {
    return written.length;
  }
  return String(amount).split('.')[1]?.length ?? 0;
}

/** Whole numbers without a unit, outside of all that was read as something else. */
function bareNumbers(text: string, statements: readonly Statement[]): CommentNumber[] {
  const found = [
    ...text.matchAll(/(?<![\w.,:/#-])(\d{1,3}(?:,\d{3})+|\d{2,5})(?![\w%°:/-]|[.,]\d)/g),
  ];
  return found.flatMap((match): CommentNumber[] => {
    const words = match[0];
    const [from, to] = [match.index, match.index + words.length];
    const amount = Number(words.replaceAll(',', ''));
    if (amount < LEAST_BARE || statements.some(({ start, end }) => start < to && end > from)) {
      return [];
    }
    const after = text.slice(to, to + 24).toLowerCase();
    const of = /whole|all of it|tray|in total/.test(after) ? 'whole' : null;
    return [
      {
        ...{ nutrient: 'energyKcal', amount, decimals: 0, about: false, of, dish: null, words },
        named: false,
      },
    ];
  });
}

/** A comment without what is no letter in it: control signs, and those that turn the order of letters around. */
export function plainComment(text: string): string {
  return text.replace(/\r\n?/g, '\n').replace(/[^\P{Cc}\n\t]|\p{Bidi_Control}/gu, '');
}
