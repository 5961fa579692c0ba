import type { Verdict } from '#lib/claims/judged';
import type { ClaimFacts } from './claim-facts';

/** What 'no added sugar' or 'no added salt' comes to. */
export interface NoAdded {
  readonly section: string;
  readonly verdict: Verdict;
  readonly why: string;
}

/** What sweetens, by its name (common practice, no source). */
const SWEET =
  /\b(sugars?|honey|syrups?|molasses|treacle|agave|nectar|dextrose|fructose|glucose|maltose|sucrose|jaggery|panela|muscovado|demerara|caramel|jams?|jelly|jellies|marmalade|condensed milk|juice concentrate|concentrated juice)\b/i;
const NOT_SWEET = /\b(sugar snap|sugar[- ]?free|no (added )?sugars?|unsweetened|without sugar)\b/i;
const SALTY = /\bsalt\b/i;
const NOT_SALTY = /\b(no (added )?salt|without salt|unsalted|salt[- ]?free)\b/i;

const RULES = {
  sugars: {
    US: '21 CFR 101.60(c)(2)',
    EU: 'Regulation (EC) No 1924/2006, Annex, “with no added sugars”',
    words: 'a food that sweetens',
    is: (text: string) => SWEET.test(text) && !NOT_SWEET.test(text),
  },
  salt: {
    US: '21 CFR 101.61(c)(2)',
    EU: 'Regulation (EC) No 1924/2006, Annex, “no added sodium/salt”',
    words: 'salt',
    is: (text: string) => SALTY.test(text) && !NOT_SALTY.test(text),
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
      why: `it asks for no ${rule.words} in it, and it has ${names}`,
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
