import { ENGLISH } from '#lib/claims/english/english';
import { cannotSay, plainly, worded, type Verdicted } from '#lib/claims/judge/verdicted';
import type { Statement } from '#lib/claims/statement';
import { fold } from '#lib/units/plain-words';
import { lastSentence } from '#lib/claims/judge-beyond/words-around';

/** UTF-16 units behind an amount in which it may be said how much of it is used, and before it that each one has it. */
const BEHIND = 70;
const BEFORE = 110;

/** So many of what an amount was said of, or such a part of it. */
export interface Used {
  readonly times: number;
  /** 'two of them', 'half the can'. */
  readonly words: string;
}

/**
 * How often what an amount says is used, where the words behind it say so of it: of the vessel or the food that it
 * names, or by a pronoun. Null where they say nothing of the kind, or another amount comes first.
 * @example usedOf('A tin of tuna, that’s 145 grams, and I’m using two of them.', said145)?.times // 2
 */
function usedOf(text: string, { end, words, ...more }: Said): Used | null {
  const behind = fold(text.slice(end, end + BEHIND)).replace(/’/g, "'");
  const found = ENGLISH.amounts.used.exec(behind);
  if (!found) return null;
  const [all, count = '', noun] = found;
  // A number between is another amount.
  if (/\d/.test(behind.slice(0, found.index))) return null;
  const named = `${fold(words)} ${more.food ?? ''}`.match(/\p{L}+/gu) ?? [];
  const same = (word: string) => ENGLISH.singular(word) === ENGLISH.singular(noun ?? '');
  if (noun !== undefined && !named.some(same)) return null;
  const times = ENGLISH.amounts.times.get(count);
  if (times === undefined) return null;
  return { times, words: all.slice(all.indexOf(count)) };
}

/**
 * Whether the words before an amount say that each portion has it.
 * @example isOfEach('each one gets some egg and half an ounce of cheddar', saidHalf) // true
 */
function isOfEach(text: string, { start }: Pick<Said, 'start'>): boolean {
  return ENGLISH.amounts.eachHas.test(lastSentence(text.slice(Math.max(0, start - BEFORE), start)));
}

type Said = Pick<Statement, 'start' | 'end' | 'words'> & { readonly food?: string };

/** A share of an ingredient; `own`: of the food that the amount itself names. */
interface Share extends Used {
  readonly own: boolean;
}

/**
 * The share of an ingredient that an amount is, by the words right before it.
 * @example shareOf('half of it goes in now so about 75 grams', said75)?.times // 1 / 2
 */
function shareOf(text: string, { start, words, food }: Said): Share | null {
  const before = lastSentence(text.slice(Math.max(0, start - BEFORE), start));
  const found = ENGLISH.amounts.shareBefore.exec(fold(before).replace(/’/g, "'"));
  const [, share = '', noun] = found ?? [];
  const times = ENGLISH.amounts.times.get(share);
  if (times === undefined) return null;
  const named = `${fold(words)} ${food ?? ''}`.match(/\p{L}+/gu) ?? [];
  const same = (word: string) => ENGLISH.singular(word) === ENGLISH.singular(noun ?? '');
  const own = noun === undefined || named.some(same);
  return { times, words: `${share} of ${own ? 'it' : `the ${noun}`}`, own };
}

/** The verdicts that an amount would have by what is said around it. */
interface Otherwise {
  readonly times: (by: number) => Verdicted;
  /** As such a share of the ingredient. */
  readonly share: (of: Used) => Verdicted;
  /** Of one portion; null where the dish has none. */
  readonly each: () => Verdicted | null;
}

/**
 * The verdict on an amount with what is said around it: that two of them or half of it is used, or that each portion has
 * it. What agrees so does agree; what then fits neither way stays open.
 * @param verdict as the amount stands alone
 */
export function withAsides(
  verdict: Verdicted,
  statement: Said & { readonly scope?: string },
  text: string,
  { times, share, each }: Otherwise,
): Verdicted {
  const part = shareOf(text, statement);
  if (part) return asShare(verdict, share(part), part);
  const used = usedOf(text, statement);
  if (used) {
    const all = times(used.times);
    if (all.verdict === 'agrees' || all.verdict === 'unknown') {
      return worded(all.verdict, () => ({ ...plainly(all), why: `${used.words}: ${all.why}` }));
    }
    if (verdict.verdict === 'unknown') return verdict;
    return worded('unknown', () =>
      cannotSay(`is it all that is used, or is that ${used.words}? ${all.why}`, {
        against: all.against,
        remark: 'toConfirm',
      }),
    );
  }
  if (verdict.verdict === 'unknown' || !isOfEach(text, statement)) return verdict;
  const one = each();
  if (one === null || one.verdict === verdict.verdict) return verdict;
  if (verdict.verdict === 'off' || one.verdict === 'off') {
    const agreed = one.verdict === 'agrees' || one.verdict === 'edge';
    if (agreed) return one;
    return worded('unknown', () =>
      cannotSay(`of one portion, or of the dish? ${one.why}; ${verdict.why}`, {
        against: verdict.against,
        remark: 'toConfirm',
      }),
    );
  }
  return verdict;
}

/** What is said to be a share is held against that; where it is all of it instead, nobody knows which was meant. */
function asShare(whole: Verdicted, part: Verdicted, { words, own }: Share): Verdicted {
  const isAll = whole.verdict === 'agrees' || whole.verdict === 'edge';
  if (part.verdict === 'unknown' || (part.verdict === 'off' ? !isAll : own)) return part;
  return worded('unknown', () =>
    cannotSay(`is it all of it, or ${words}? ${part.why}`, {
      against: part.against,
      remark: 'toConfirm',
    }),
  );
}
