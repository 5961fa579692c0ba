import { ENGLISH } from '#lib/claims/english/english';
import { chaptersIn } from '#lib/cut/read-chapters';
import { words } from '#lib/foods/search-text';
import { dishesNamed, type DishName } from './dish-names';
import type { Topic } from './placed-text';

/** Words of a heading at most (common practice, no source). */
const MOST_WORDS = 9;
/**
 * What each line of a written text is about: under a heading that names one dish, that dish; a line that names one and
 * says a number of it is about it alone; another heading or a chapter of a list ends it.
 * @param whole what all of it is about where no heading says otherwise
 */
export function topicsOfLines(
  lines: readonly string[],
  names: readonly DishName[],
  whole: Topic,
): Topic[] {
  let held = whole;
  let blank = true;
  const chapters = chaptersIn(lines);
  return lines.map((line, index) => {
    const afterBlank = blank;
    blank = line.trim() === '';
    if (blank) return held;
    if (chapters[index]) return (held = whole);
    const bare = line.replace(ENGLISH.places.timeOfDay, '');
    const said = words(bare);
    const named = said.length > 0 ? dishesNamed(bare, names) : [];
    const [dish] = named;
    if (named.length === 1 && dish && isAbout(bare, said.length, dish)) {
      const topic: Topic = { kind: 'dish', segmentId: dish.segmentId };
      if (ENGLISH.places.nutrientNumber.test(line)) return topic;
      return (held = topic);
    }
    const other = bare !== line || (named.length === 0 && isOtherHeading(line, afterBlank));
    if (names.length > 1 && other) held = whole;
    return held;
  });
}

/** A line that begins with the dish's name, or is little more than it. */
function isAbout(line: string, count: number, { stems }: DishName): boolean {
  const first = words(line)
    .slice(0, stems.length + 2)
    .filter(({ stem }) => stems.includes(stem)).length;
  const mostly = first >= Math.min(2, stems.length);
  return mostly && (count <= MOST_WORDS || ENGLISH.places.nutrientNumber.test(line));
}

function isOtherHeading(line: string, afterBlank: boolean): boolean {
  const bare = line.trim().replace(/^[#*=\-–•\s]+|[#*=\-–\s]+$/g, '');
  const said = bare.match(/[\p{L}\d]+/gu) ?? [];
  if (said.length === 0 || said.length > MOST_WORDS) return false;
  const shouted = bare === bare.toUpperCase() && /\p{L}{3}/u.test(bare);
  const marked = /^\s*#/.test(line) || bare.endsWith(':') || (shouted && !/\d/.test(bare));
  if (!marked || !(afterBlank || shouted)) return false;
  return !said.every((word) => ENGLISH.places.partsOfDish.has(word.toLowerCase()));
}
