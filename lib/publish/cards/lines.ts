import { wide, type Lettering } from '#lib/publish/cards/paint';

/** What stays on one line: a number and its unit, and what is said of it. */
const TOGETHER =
  /(?<=(?:^|[\s(])[\d.,–⁄½¼¾]+[*†]?) (?=(?:g|kg|mg|µg|ml|l|kcal|kJ|oz|lb|tsp|tbsp|cups?|min|s|h|%|°C|°F)(?![\p{L}\p{N}]))/gu;
const GLUE = '\u00A0';

/** Words with a number's blank made one that is not broken at. */
function pieces(text: string): string[] {
  return text
    .replace(TOGETHER, GLUE)
    .split(' ')
    .filter((piece) => piece !== '');
}

/**
 * Words in as few lines as a width takes, of about the same length, so that no word stands alone under a long line. A
 * number and its unit stay together; a word wider than the line is broken between letters.
 *
 * Law: no line is wider than the width, and but for blanks and the dots between facts, which no line begins or ends
 * with, all of the text is in the lines, in order.
 *
 * @example linesOf('12 g fat and 9 g salt', { size: 40, face: 'text' }, 300) // ['12 g fat and', '9 g salt']
 */
export function linesOf(
  text: string,
  lettering: Pick<Lettering, 'size' | 'face'>,
  width: number,
): string[] {
  const parts = pieces(text).flatMap((piece) => broken(piece, lettering, width));
  const fewest = filled(parts, lettering, width);
  let [low, high] = [0, width];
  // The narrowest width that takes no more lines, to a unit.
  while (high - low > 1 && fewest.length > 1) {
    const middle = (low + high) / 2;
    const tried = filled(parts, lettering, middle);
    const fits = tried.every((line) => wide(line, lettering) <= middle);
    if (fits && tried.length <= fewest.length) high = middle;
    else low = middle;
  }
  return filled(parts, lettering, high).map((line) =>
    line.replaceAll(GLUE, ' ').replace(/^· | ·$/g, ''),
  );
}

function filled(
  parts: readonly string[],
  lettering: Pick<Lettering, 'size' | 'face'>,
  width: number,
): string[] {
  const lines: string[] = [];
  for (const part of parts) {
    const last = lines.at(-1);
    const longer = `${last ?? ''} ${part}`;
    if (last !== undefined && wide(longer, lettering) <= width) lines[lines.length - 1] = longer;
    else lines.push(part);
  }
  return lines;
}

/** A piece as it is, else its words, else as many letters at a time as fit; one letter at least. */
function broken(
  piece: string,
  lettering: Pick<Lettering, 'size' | 'face'>,
  width: number,
): string[] {
  if (wide(piece, lettering) <= width) return [piece];
  if (piece.includes(GLUE)) {
    return piece.split(GLUE).flatMap((word) => broken(word, lettering, width));
  }
  const found: string[] = [];
  let run = '';
  for (const letter of piece) {
    if (run !== '' && wide(run + letter, lettering) > width) {
      found.push(run);
      run = '';
    }
    run += letter;
  }
  return [...found, run];
}
