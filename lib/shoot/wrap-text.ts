/**
 * Text broken at spaces into lines of at most `width` characters (code points); a word that is longer
 * is cut. The first line starts with `first`, the others with `rest`; both count.
 *
 * @example wrapText('one two three', 9) → ['one two', 'three']
 */
export function wrapText(text: string, width: number, first = '', rest = first): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  const length = (value: string): number => [...value].length;
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    let left = word;
    if (!empty && length(line) + 1 + length(left) > width) {
      lines.push(line);
      line = rest;
      empty = true;
    }
    while (length(line) + (empty ? 0 : 1) + length(left) > width) {
      const room = Math.max(1, width - length(line));
      lines.push(line + [...left].slice(0, room).join(''));
      left = [...left].slice(room).join('');
      line = rest;
      empty = true;
    }
    line += empty ? left : ` ${left}`;
    empty = false;
  }
  lines.push(line);
  return lines.map((value) => value.trimEnd());
}
