import type { Token } from '#lib/episode/read-ingredient-tokens';
import { phrase, word } from '#lib/method/words-at';

/** What a time of a text is about. */
export type TimeUse =
  /** How long an action takes. */
  | 'step'
  /** For each side: to be doubled. */
  | 'side'
  /** Said to be the whole of several. */
  | 'total'
  /** An interval, a burst, a moment within a longer time or an age: no time of a step. */
  | 'none';

/** Words before a time that leave it what it is. */
const ABOUT =
  /^(?:about|around|roughly|approximately|approx|circa|ca|some|just|under|over|exactly|good|nearly|almost|only|a|further|another|additional|extra|more|maybe|perhaps|the|full|well|next|or|–|—|-|\(|about:|another:|usually|say)$/;

/** The token before the words that hedge a time. */
function beforeHedge(tokens: readonly Token[], from: number): number {
  let at = from - 1;
  while (at >= 0 && ABOUT.test(word(tokens, at))) at -= 1;
  return at;
}

const NONE_BEFORE =
  /(?:every|each|after|after the first|after a|after the|for the last|for the first|for the final|the last|the first|the final|the remaining|the initial|within|within the last|with|when|once every|last|ready in|during the last|in)$/;
const NONE_AFTER =
  /^(?:(?:long )?(?:bursts?|intervals?|increments?|pulses?|blasts?|bouts?|spells?|goes)\b|old\b|- ?old\b|before the end|from the end|later\b|to go\b|remaining\b|remain\b|apart\b|into the|into cooking|into baking|ahead\b|before the (?:baking|cooking) (?:time )?(?:ends|is up)|left\b|in advance\b|beforehand\b)/;
const SIDE_AFTER =
  /^(?:,? ?or so )?(?:(?:per|a|each|on each|for each|on either|either|on both|on the each|to each) (?:side|sides|face|faces)|each (?:side|face))\b/;
const SIDE_BEFORE = /(?:each side|each face|per side|each side for)$/;
const TOTAL_AFTER =
  /^(?:,? ?)?(?:in total|total|in all|altogether|all told|overall|all together)\b/;
const TOTAL_BEFORE = /(?:in total|a total of|total of|altogether|in all)$/;

/**
 * What a time is about, by the words before and after it: in 'for the last 5 minutes' it is no time of a step.
 * @param from where it begins among the tokens
 * @param next the token after it
 */
export function purposeOf(tokens: readonly Token[], from: number, next: number): TimeUse {
  const hedge = beforeHedge(tokens, from);
  const before = phrase(tokens, hedge - 4, hedge + 1);
  const straight = phrase(tokens, from - 5, from);
  const after = phrase(tokens, next, next + 5).replace(/^(?:longer|more) /, '');
  if (TOTAL_AFTER.test(after) || TOTAL_BEFORE.test(straight)) return 'total';
  if (SIDE_AFTER.test(after) || SIDE_BEFORE.test(before.replace(/ for$/, ''))) return 'side';
  if (NONE_AFTER.test(after)) return 'none';
  const article = /^(?:a|an)$/.test(word(tokens, from));
  const bare = article ? straight : before;
  if (/\bafter$/.test(bare)) return 'none';
  if (
    /\b(?:for|another|further|at least|up to)$/.test(straight) &&
    !/(?:last|first|final)$/.test(straight)
  ) {
    return 'step';
  }
  if (/\bin$/.test(bare)) {
    return /(?:ready|done|cooked|finished) in$/.test(bare) ? 'none' : 'step';
  }
  if (/(?:with|when)$/.test(bare))
    return /^(?:to go|left|remaining|remain)/.test(after) ? 'none' : 'step';
  return NONE_BEFORE.test(bare) || NONE_BEFORE.test(straight) ? 'none' : 'step';
}
