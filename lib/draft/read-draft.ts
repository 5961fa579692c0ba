import { failed, ok, type Problem, type Result } from '#lib/result';
import { UNDESCRIBED } from './described';
import type { Draft, OutTexts } from './draft';
import { putTogether, titleSaid } from './put-together';
import { readDescription } from './read-description';
import { spokenText } from './spoken';

/** Far more than any description has, in characters. */
export const MOST_DESCRIPTION = 400_000;
const MOST_TITLE = 2000;

/**
 * A draft of an episode that is out, from its captions or transcript, its description and its title, whichever there
 * are: segments in viewing order with their times, dishes with ingredients in the words they were written in, portions,
 * method, links. Nothing is made up: a dish that no text gives ingredients has none. What was not understood is told by
 * line. The work is in proportion to the texts.
 * @returns refused in words, at the text that is too long, or where there is nothing to read
 * @example readDraft({ description: 'Oat jars\n80 g rolled oats\n300 g skyr' }) // one dish of two ingredients
 */
export function readDraft({
  captions = '',
  description = '',
  title = '',
}: OutTexts): Result<Draft> {
  const problems: Problem[] = [];
  const refuse = (path: string, code: string, message: string) =>
    problems.push({ path, code, message });
  if (description.length > MOST_DESCRIPTION) {
    const message = `A description of at most ${MOST_DESCRIPTION} characters is read: this has ${description.length}.`;
    refuse('description', 'too-long', message);
  }
  if (title.length > MOST_TITLE) {
    refuse(
      'title',
      'too-long',
      `A title has at most ${MOST_TITLE} characters: this has ${title.length}.`,
    );
  }
  if ([captions, description, title].every((text) => text.trim() === '')) {
    refuse('captions', 'empty', 'Paste the captions or the description of an episode, or both.');
  }
  const spoken = captions.trim() === '' ? null : spokenText(captions);
  if (spoken && !spoken.ok) problems.push(...spoken.problems);
  const [first, ...rest] = problems;
  if (first) return failed(first, ...rest);
  const described = description.trim() === '' ? UNDESCRIBED : readDescription(description);
  return ok(putTogether(described, spoken?.ok ? spoken.value : null, titleSaid(title)));
}
