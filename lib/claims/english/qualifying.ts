import type { QualifyingWords } from '../judging-words';

const MEALS =
  '(?:lunch(?:es)?|dinners?|breakfasts?|suppers?|meals?|dishes|dish|recipes?|snacks?|desserts?|puddings?|mains?|salads|soups|smoothies|sandwiches|bowls)';
const MANY =
  '(?:[2-9]|1\\d|20|two|three|four|five|six|seven|eight|nine|ten|both|all\\s+(?:the|my|our|these|those))';

const NUMBERS = 'two|three|four|five|six|seven|eight|nine|ten|[2-9]|10';

/** Before a count of what one dish makes: 'this makes four bowls'. */
const MADE =
  '\\b(?:makes|made|into|between|among|serves|yields?|gives?)\\s+(?:about\\s+|around\\s+|you\\s+|me\\s+|us\\s+)?';

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
  amountEach:
    /(?:\d\s*(?:g|kcals?|cals?|kj|mg)|\b(?:grams?|calories|protein|carbs?|carbohydrates?|fat|fib(?:re|er)|sugars?|salt|sodium))\s+(?:each|apiece)(?:\s+(?:at|with|and|for|in))*\s*$/iu,
  countedDishes: new RegExp(`(?<!${MADE})\\b${MANY}\\s+(?:[\\p{L}-]+\\s+){0,3}?${MEALS}\\b`, 'iu'),
  together:
    /\b(?:all|both)(?:\s+of)?(?:\s+(?:these|them|those|the))?\b|\b(?:together|combined|between\s+them|put\s+together)\b/iu,
  ofAll: new RegExp(
    `\\b(?:all|both)(?:\\s+of)?(?:\\s+(?:these|them|those|the))?(?:\\s+(${NUMBERS}))?\\b`,
    'iu',
  ),
  added:
    /\b(?:eat|eats|ate|eating|have|had|having|add|adds|added|adding|together|combined|total|altogether|in\s+(?:one|a|the\s+same|a\s+single)\s+(?:day|sitting|go))\b/iu,
  aDay: /\b(?:in|for|over)\s+(?:one|a|the\s+same|a\s+single)\s+(?:day|sitting|go)\b/giu,
  soThat:
    /\b(?:that['’]?s|that\s+is|that\s+comes\s+to|it\s+comes\s+to|comes\s+to|total(?:s|ling)?)(?:\s+(?:only|just|about|around|roughly|under|over|less\s+than|more\s+than|all\s+of|a\s+total\s+of))*\s*$/iu,
  oneOf: /\b(?:one|an?)\s+(?!of\b|day\b|go\b)(?=\p{L})/giu,
  countedRight: new RegExp(
    `(?<!${MADE})\\b${MANY}\\s+(?:[\\p{L}-]+\\s+){0,3}?${MEALS}(?:\\s*|[\\s,:–—-]*all\\s+)$`,
    'iu',
  ),
};
