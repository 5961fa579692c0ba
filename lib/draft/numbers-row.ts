/** Numbers of nutrients and prices as descriptions write them, as patterns of folded text (common practice, no source). */
const NUMBER = String.raw`\d[\d.,]*`;
const ABOUT = String.raw`(?:about|approx\.?|approximately|around|roughly|just|only|under|over)\s+`;
const GRAMS = String.raw`\s*(?:g|grams?)?\s*`;
const MASSES = 'protein|carbs?|carbohydrates?|net carbs|fat|fib(?:re|er)';

const ENERGY = new RegExp(String.raw`(?:${ABOUT})?${NUMBER}\s*(?:kcals?|cals?|calories|kj)\b`, 'y');
const MASS = new RegExp(
  String.raw`(?:${ABOUT})?${NUMBER}${GRAMS}(?:of )?(?:${MASSES})\b|(?:${MASSES})\s*[:=]?\s*${NUMBER}${GRAMS}`,
  'y',
);
/** "31P", "P: 31 g". */
const LETTER = new RegExp(
  String.raw`${NUMBER}\s*g?\s*[pcf]\b|[pcf]\s*[:=]?\s*${NUMBER}\s*g?\b`,
  'y',
);
const MONEY = new RegExp(
  String.raw`(?:${ABOUT})?(?:[£$€]\s*${NUMBER}|${NUMBER}\s*(?:[£€$]|(?:pence|quid|cents?|dollars?|euros?|bucks)\b))|(?:${ABOUT})?${NUMBER}\s*p\b(?=\s+(?:an?|per|each)\b)`,
  'y',
);
/** Numbers that are of a food in a list, unless others stand beside them. */
const LESS_SURE = new RegExp(
  String.raw`${NUMBER}\s*m?g\s*(?:of )?(?:which )?(?:sugars?|salt|sodium|saturates|sat(?:urated)? fat)\b|(?:of which )?(?:sugars?|salt|sodium|saturates|sat(?:urated)? fat)\s*[:=]?\s*${NUMBER}\s*m?g\b`,
  'y',
);
/** Of what the numbers are, and what is between them. */
const BESIDE =
  /\s*\/\s*[a-z]+(?![\p{L}\d])|(?:[\s,;|/•·=+()[\]&~≈:–—-]|\.(?!\d))+|(?:each|apiece|and|in total|totals?|all in|overall|altogether|the lot|costs?|prices?|macros|for (?:the|all|one|an?|each|\d+)(?: [a-z]+){1,2}|(?:per|an?|each|whole|the whole) [a-z]+)(?![\p{L}\d])/uy;

const SURE = [ENERGY, MASS, MONEY];
const LONGEST = 400;

/**
 * Whether a line says nothing but numbers of nutrients or prices, and of what they are. A number of a macronutrient by
 * its letter may be something else ("30C"): protein's and another are needed.
 * @example isNumbersRow('245 kcal per square, £1.92 total') // true; of '30 g protein powder' false
 */
export function isNumbersRow(folded: string): boolean {
  if (folded.length > LONGEST || !/\d/.test(folded)) return false;
  const letters = new Set<string>();
  let isSure = false;
  for (let at = 0; at < folded.length;) {
    const sure = Math.max(...SURE.map((kind) => endOf(kind, folded, at)));
    const letter = endOf(LETTER, folded, at);
    isSure ||= sure > at;
    if (sure === at && letter > at) letters.add(/[pcf]/.exec(folded.slice(at, letter))?.[0] ?? '');
    const next = Math.max(sure, letter, endOf(LESS_SURE, folded, at), endOf(BESIDE, folded, at));
    if (next === at) return false;
    at = next;
  }
  return isSure || (letters.has('p') && letters.size > 1);
}

/** Where what a pattern finds right there ends; the place itself where it finds nothing. */
function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}
