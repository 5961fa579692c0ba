import type { QualifyingWords } from '../judging-words';

const MEALS =
  '(?:lunch(?:es)?|dinners?|breakfasts?|suppers?|meals?|dishes|dish|recipes?|snacks?|desserts?|puddings?|mains?|salads|soups|smoothies|sandwiches|bowls)';
const MANY =
  '(?:[2-9]|1\\d|20|two|three|four|five|six|seven|eight|nine|ten|both|all\\s+(?:the|my|our|these|those))';

/** Words before a number that say of which several it is, or of what else than the dish. */
export const QUALIFYING: QualifyingWords = {
  without:
    /\bwithout\s+(?:the\s+|any\s+|all\s+the\s+|that\s+)?(\p{L}+)(?:\s+\p{L}+)?[\s,]+(?:(?:it|that|this|you|a|one|each|we|they)(?:['’]?(?:s|re|d))?\s+)?(?:\p{L}+\s+){0,3}$/iu,
  pronouns: /^(?:it|them|that|this|those|these)$/i,
  thanOthers:
    /\bthan\s+(?:most|any|other|some|all(?:\s+other)?|your\s+average)\s+(\p{L}+)\b([^.!?]*)$/iu,
  allOf:
    /(?:^|[\s,;:(!?.–—-])(?:all|every\s+(?:single\s+)?one|each(?:\s+one)?|both)(?:\s+(?:of\s+)?(?:them|these|those))?(?:\s+(?:three|four|five|six|seven|eight|nine|ten|\d{1,2}))?(\s+(?:are|is|were|come\s+in|comes\s+in|coming\s+in|come\s+out|have|has|with|being|stay|stays|land|at|of\s+them|of\s+these))*\s*$/iu,
  allOfThem:
    /\ball\s+(?:of\s+)?(?:them|these|those)(?:\s+(?:are|is|were|come\s+in|come\s+out|have|has|at))*\s*$/iu,
  each: /\b(?:each|apiece|every\s+one|all\s+of\s+them)\b/i,
  countedDishes: new RegExp(`\\b${MANY}\\s+(?:[\\p{L}-]+\\s+){0,3}?${MEALS}\\b`, 'iu'),
  countedRight: new RegExp(
    `\\b${MANY}\\s+(?:[\\p{L}-]+\\s+){0,3}?${MEALS}[\\s,:–—-]*(?:all\\s+)?$`,
    'iu',
  ),
};
