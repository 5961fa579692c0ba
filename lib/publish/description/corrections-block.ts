import { LISTED } from '#lib/publish/correction/correction-words';
import type { BlockContext } from '#lib/publish/description/block';
import { heading, lines, list, type Part, type Section } from '#lib/publish/document/document';

/** What was put right since it went out, the last first: each with its reason, and its dishes as a list. */
export function correctionSections({ corrections }: BlockContext): readonly Section[] {
  const told = corrections.flatMap(partsOf);
  return told.length === 0 ? [] : [[...heading(2, 'Corrections'), ...told]];
}

/** Words of several lines as parts; lines that are listed stand in lists. */
function partsOf(text: string): Part[] {
  const parts: Part[] = [];
  let items: string[] = [];
  const flush = () => {
    parts.push(...list(items));
    items = [];
  };
  for (const line of text.split('\n')) {
    if (line.startsWith(LISTED)) items.push(line.slice(LISTED.length));
    else {
      flush();
      parts.push(...lines(line));
    }
  }
  flush();
  return parts;
}
