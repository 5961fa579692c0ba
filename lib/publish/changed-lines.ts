/** A line that only one of two texts has. */
export interface ChangedLine {
  readonly side: 'then' | 'now';
  readonly text: string;
}

/** Lines of a text at most, beyond which it is compared no further. */
const MOST = 2000;

/**
 * Lines that one text has and the other has not, in their order, by a longest common subsequence.
 * @example changedLines('a\nb', 'a\nc') // [{ side: 'then', text: 'b' }, { side: 'now', text: 'c' }]
 */
export function changedLines(then: string, now: string): readonly ChangedLine[] {
  return alignedLines(then, now).filter(
    (line): line is ChangedLine => line.side !== 'both' && line.text !== '',
  );
}

/** A line of two texts: of both, or of one of them. */
export interface AlignedLine {
  readonly side: ChangedLine['side'] | 'both';
  readonly text: string;
}

/**
 * All lines of two texts in one order, those of a longest common subsequence once.
 * @example alignedLines('a\nb', 'a').map(({ side }) => side) // ['both', 'then']
 */
export function alignedLines(then: string, now: string): readonly AlignedLine[] {
  const [a, b] = [then, now].map((text) => text.split('\n').slice(0, MOST));
  if (!a || !b) return [];
  // common[i][j]: how many lines a from i on and b from j on have in common, in order.
  const common = Array.from({ length: a.length + 1 }, () => new Uint16Array(b.length + 1));
  const at = (i: number, j: number) => common[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i -= 1) {
    const row = common[i];
    if (!row) continue;
    for (let j = b.length - 1; j >= 0; j -= 1) {
      row[j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const lines: AlignedLine[] = [];
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    const [was, is] = [a[i], b[j]];
    if (was !== undefined && was === is) {
      lines.push({ side: 'both', text: was });
      i += 1;
      j += 1;
    } else if (was !== undefined && (is === undefined || at(i + 1, j) >= at(i, j + 1))) {
      lines.push({ side: 'then', text: was });
      i += 1;
    } else {
      lines.push({ side: 'now', text: is ?? '' });
      j += 1;
    }
  }
  return lines;
}
