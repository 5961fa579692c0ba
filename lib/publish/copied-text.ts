import { alignedLines, changedLines, type ChangedLine } from '#lib/publish/changed-lines';
import { DROPPABLE, type Droppable } from '#lib/publish/description/what-to-drop';

/** A text that was copied, held against the one of now. */
export interface HeldCopy {
  /** What the two say otherwise. */
  readonly since: readonly ChangedLine[];
  /** Left out of the one of now, since the copy was made without: in the order of `DROPPABLE`. */
  readonly without: readonly Droppable[];
}

/**
 * Holds a text that was copied against the same text of now. With a copy is kept which form it has and not what was left
 * out of it, so that is found from the copy itself: a part of which it has nothing, and in whose place it has nothing
 * else. A part that was written anew has other words in its place and is told as changed.
 * @param textWithout the text of now in the copy's form, without some parts
 * @example heldAgainst(copiedWithoutMethod, textWithout) // { since: [], without: ['method'] }
 */
export function heldAgainst(
  copied: string,
  textWithout: (parts: readonly Droppable[]) => string,
): HeldCopy {
  let without: readonly Droppable[] = [];
  let apart = distance(copied, textWithout(without));
  for (const part of DROPPABLE) {
    if (apart.lines === 0) break;
    const tried = [...without, part];
    const then = distance(copied, textWithout(tried));
    if (then.lines >= apart.lines || then.inPlace > apart.inPlace) continue;
    without = tried;
    apart = then;
  }
  return { since: changedLines(copied, textWithout(without)), without };
}

/** How far two texts are apart. */
interface Distance {
  /** Lines of only one of them. */
  readonly lines: number;
  /** Lines of the copy alone, by so many more than stand in their place now. */
  readonly inPlace: number;
}

function distance(copied: string, now: string): Distance {
  let [lines, inPlace, surplus] = [0, 0, 0];
  for (const { side } of alignedLines(bare(copied), bare(now))) {
    if (side === 'both') {
      inPlace += Math.max(0, surplus);
      surplus = 0;
    } else {
      lines += 1;
      surplus += side === 'then' ? 1 : -1;
    }
  }
  return { lines, inPlace: inPlace + Math.max(0, surplus) };
}

/** Lines with words alone, without what a form puts around them by where they stand in their paragraph. */
function bare(text: string): string {
  return text
    .split('\n')
    .map((line) => line.replace(/^<p>/, '').replace(/(?:\\|<br>|<\/p>)$/, ''))
    .filter((line) => line !== '')
    .join('\n');
}
