import { singular } from '#lib/units/plain-words';
import type { Language, Role } from '../language';
import { phrases } from '../words/phrases';
import { CLAIM_WORDS } from './claim-words';
import { DIFFERENCES } from './differences';
import { ELSEWHERE } from './elsewhere';
import { FOODS } from './foods';
import { FREE_FROM } from './free-from';
import { HEARSAY } from './hearsay';
import { HEDGES, HEDGES_AFTER } from './hedges';
import { JUDGING } from './judging';
import { AMOUNT_WORDS } from './judging-amounts';
import { KINDS } from './kinds';
import { LETTERS, NUTRIENT_NOUNS, PART_NOUNS } from './nutrients';
import { NUMBERS } from './numbers';
import { ADJECTIVES, THINGS } from './parts';
import { PATTERNS } from './patterns';
import { PLACES } from './places';
import { SCOPES } from './scopes';
import { SHORTENED, SMALL_WORDS } from './small-words';
import { titleParts, titleVessels } from './title-parts';
import { QUALIFYING } from './qualifying';
import { CORRECTIONS, OTHER_DAYS, TIMES, TRAPS } from './traps';
import { CURRENCIES, UNITS } from './units';
import { set } from './words';

/** Roles of phrases, all that a phrase has. */
function lexicon(...tables: readonly (readonly [string, Role])[][]): Language['lexicon'] {
  const roles = new Map<string, Role[]>();
  for (const [spelt, role] of tables.flat()) {
    // As tokens are folded, "slice's" is 'slices'.
    const phrase = spelt.replaceAll("'", '');
    const known = roles.get(phrase);
    if (known) known.push(role);
    else roles.set(phrase, [role]);
  }
  return phrases(roles);
}

/** English, American and British. */
export const ENGLISH: Language = {
  titleParts,
  titleVessels,
  adjectives: ADJECTIVES,
  lexicon: lexicon(
    UNITS,
    NUTRIENT_NOUNS,
    PART_NOUNS,
    HEDGES,
    SCOPES,
    THINGS,
    TIMES,
    KINDS,
    TRAPS,
    HEARSAY,
    OTHER_DAYS,
    CORRECTIONS,
    SMALL_WORDS,
    DIFFERENCES,
    ELSEWHERE,
  ),
  hesitations: set('um uh er erm umm uhm uhh ehm hm hmm mm mmm ah uhhh ummm'),
  hedgesBehind: phrases(HEDGES_AFTER),
  numbers: NUMBERS,
  letters: LETTERS,
  moneyUnits: new Map([['lb', 'GBP']]),
  currencies: CURRENCIES,
  currencyLetters: set('us ie'),
  moneyLetters: new Map([['p', { unit: 'GBP', factor: 1 / 100 }]]),
  foods: FOODS,
  claims: CLAIM_WORDS,
  freeFrom: FREE_FROM,
  patterns: PATTERNS,
  places: PLACES,
  judging: JUDGING,
  amounts: AMOUNT_WORDS,
  qualifying: QUALIFYING,
  shortened: SHORTENED,
  singular,
  fahrenheitFrom: { oven: 275, inside: 100 },
};
