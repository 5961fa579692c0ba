import { readSentence } from '#lib/method/read-sentence';
import type { Row } from './text-rows';

/** Words of somebody who tells rather than asks for something to be done. */
export const SAYS_I = /\b(?:i|i'm|i've|you|we|it's|this|that's|let me|don't)\b/;
const BEFORE_VERB =
  /^(?:(?:then|now|next|first|finally|meanwhile|lastly|in a (?:large |small )?(?:bowl|pan|tray|pot))[,:]?\s+)*/;
const LONGEST_LINE = 1200;
const LONGEST_SENTENCE = 400;

/** Whether a line asks for something to be done, as a method does: its first word is the verb. */
export function asksToDo({ body, folded }: Pick<Row, 'body' | 'folded'>): boolean {
  if (body.length > LONGEST_LINE || SAYS_I.test(folded.slice(0, 40))) return false;
  const [sentence = ''] = body.split(/(?<=[.!?])\s/);
  const [step] = readSentence(sentence.slice(0, LONGEST_SENTENCE));
  if (!step || step.verb === '') return false;
  const first = folded.replace(BEFORE_VERB, '').split(/[^a-z-]+/)[0] ?? '';
  return first.startsWith(step.verb.slice(0, 5)) && folded.split(' ').length >= 3;
}
