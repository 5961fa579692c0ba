import { ENGLISH } from '#lib/claims/english/english';
import type { Verdict } from '#lib/claims/judged';
import type { ClaimFacts } from './claim-facts';

/** What 'no added sugar' or 'no added salt' comes to. */
export interface NoAdded {
  readonly section: string;
  readonly verdict: Verdict;
  readonly why: string;
}

const WORDS = ENGLISH.judging;

const RULES = {
  sugars: {
    US: '21 CFR 101.60(c)(2)',
    EU: 'Regulation (EC) No 1924/2006, Annex, “with no added sugars”',
    words: 'a food that sweetens',
    none: 'no food that sweetens',
    is: (text: string) => WORDS.sweet.test(text) && !WORDS.notSweet.test(text),
  },
  salt: {
    US: '21 CFR 101.61(c)(2)',
    EU: 'Regulation (EC) No 1924/2006, Annex, “no added sodium/salt”',
    words: 'salt',
    none: 'no salt',
    is: (text: string) => WORDS.salty.test(text) && !WORDS.notSalty.test(text),
  },
} as const;

/**
 * Judges 'no added sugar' and 'no added salt': off where an ingredient is one by its name, or a label states added
 * sugars; else nobody can say from names alone what is in a packaged food.
 * @example noAdded('sugars', facts) // off: “20 g brown sugar” is a food that sweetens
 */
export function noAdded(of: 'sugars' | 'salt', facts: ClaimFacts): NoAdded {
  const rule = RULES[of];
  const section = rule[facts.region];
  const found = facts.lines.filter(({ text, food }) => rule.is(text) || rule.is(food ?? ''));
  if (found.length > 0) {
    const names = found.map(({ text }) => `“${text}”`).join(', ');
    return {
      section,
      verdict: 'off',
      why: `it asks for ${rule.none} in it, and it has ${names}`,
    };
  }
  const added = of === 'sugars' ? facts.whole(['addedSugars']).low : null;
  if (added !== null && added > 0) {
    return {
      section,
      verdict: 'off',
      why: 'it asks for no added sugars, and labels of its foods state some',
    };
  }
  return {
    section,
    verdict: 'unknown',
    why: `can’t say: no ingredient is ${rule.words} by its name, and what was added to packaged ones only their lists of ingredients tell`,
  };
}
