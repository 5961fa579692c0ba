import { LONGEST_KEPT_METHOD } from '#lib/episode/step-limits';
import { failed, ok, type Result } from '#lib/result';

/**
 * The text that a dish has as its method once the steps of a pasted one were added. A text that shares a line with the
 * one that stands there is that text as it was put right; any other is what comes after it, as its steps do.
 * @example keptMethod('Mash the beans.', 'Fry the mash for 4 minutes.', true).value
 *   // 'Mash the beans.\n\nFry the mash for 4 minutes.'
 * @param follows whether the new steps come after others; without any the pasted text is the whole method
 */
export function keptMethod(standing: string, pasted: string, follows: boolean): Result<string> {
  const [before, added] = [standing.trim(), pasted.trim()];
  const lines = new Set(linesOf(before));
  const isOther = follows && before !== '' && !linesOf(added).some((line) => lines.has(line));
  return checkedMethod(isOther && added !== '' ? `${before}\n\n${added}` : added);
}

/** A text as a dish can keep it for its method, or by how much it is too long. */
export function checkedMethod(text: string): Result<string> {
  const kept = text.trim();
  const more = kept.length - LONGEST_KEPT_METHOD;
  if (more <= 0) return ok(kept);
  const message = `A dish keeps a method of at most ${LONGEST_KEPT_METHOD} characters, as the viewer reads it: with this it has ${more} too many. Shorten it.`;
  return failed({ path: 'method', code: 'too-long', message });
}

/** Lines with words in them, however they are spaced. */
function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.replace(/\s+/g, ' ').trim())
    .filter((line) => /[\p{L}\p{N}]/u.test(line));
}
