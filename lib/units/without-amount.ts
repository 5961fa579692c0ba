const AMOUNT = /^(?:about |ca\.? )?[\d½⅓⅔¼¾⅛⅜⅝⅞][\d½⅓⅔¼¾⅛⅜⅝⅞\s.,/–-]*(?:[x×]\s*[\d.,]+)?\s*/i;
const UNIT =
  /^(?:kg|g|grams?|ml|l|litres?|liters?|oz|ounces?|lbs?|pounds?|tsp|teaspoons?|tbsp|tablespoons?|fl\.? oz|cups?|cloves?|slices?|pieces?|servings?|handfuls?|pinch(?:es)?|large|medium|small)\b\.?\s*(?:of\b\s*)?/i;

/**
 * The food words of an ingredient as written, without the amount in front, for looking the food up.
 * Only for searching: the amount itself is not read here.
 * `withoutAmount('150 g pearl barley')` → `'pearl barley'`; `withoutAmount('2 cloves of garlic')` → `'garlic'`.
 */
export function withoutAmount(text: string): string {
  const trimmed = text.trim();
  const amount = AMOUNT.exec(trimmed);
  if (!amount) return trimmed;
  const rest = trimmed.slice(amount[0].length);
  const food = rest.replace(UNIT, '').replace(UNIT, '').trim();
  return food === '' ? trimmed : food;
}
