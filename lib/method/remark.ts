import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { TimeAt } from '#lib/method/times';

const HEADS =
  /^(?:serves|makes|yields|(?:tips?|notes?) ?[:–—-]|nutrition|per serving|(?:prep|preparation|cook|cooking|total|active|hands-on) time|(?:the )?total (?:cooking |baking )?time|ready in|variation|variations|ingredients|method|cook's note|equipment)(?![\w-])/;
const KEEPS = /\b(?:keeps?|stores?|stored|lasts?|keeping)\b/;
const PLACE =
  /\b(?:fridge|refrigerator|freezer|airtight|container|jar|tin|box|refrigerated|frozen|cool place|days?)\b/;

/**
 * Whether a sentence only tells something: how much it makes, how long it keeps, what could be done.
 * 'The pickle keeps for up to 3 weeks in the fridge.' is one.
 */
export function isRemark(tokens: readonly Token[], times: readonly TimeAt[]): boolean {
  const text = tokens.map(({ folded }) => folded).join(' ');
  if (HEADS.test(text)) return true;
  if (
    /^(?:it|this|that|they) (?:(?:should|will|can|may|might) )?(?:takes?|needs?|lasts?)\b/.test(
      text,
    )
  )
    return true;
  const long = times.some(({ days }) => days);
  if (long && KEEPS.test(text)) return true;
  if (KEEPS.test(text) && /\b(?:up to|well)\b/.test(text) && PLACE.test(text)) return true;
  if (long && /\bfreez(?:e|es|er)\b/.test(text) && /\b(?:months?|weeks?)\b/.test(text)) return true;
  return /^(?:it|this|they|these|leftovers|any leftovers|the [\w' -]{1,40}?) (?:can|could|may|might) (?:also |even |safely |well )?be\b/.test(
    text,
  );
}
