import { ENGLISH } from '#lib/claims/english/english';
import { chaptersIn } from '#lib/cut/read-chapters';
import { words } from '#lib/foods/search-text';
import { dishesNamed, type DishName } from './dish-names';
import { UNKNOWN_TOPIC, type Topic } from './placed-text';

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
  const topics = lines.map((line, index) => {
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
  return withTotal(lines, topics);
}

/**
 * A total at the end of several dishes, set off by a blank line, is the day's where the last dish has numbers of its own;
 * else nobody can say whether it is that dish's. Where a dish before has a total too, each is of its dish.
 */
function withTotal(lines: readonly string[], topics: readonly Topic[]): Topic[] {
  const { total, energy } = ENGLISH.places;
  const at = lines.findIndex((line) => total.test(line) && energy.test(line));
  const held = topics[at];
  const blank = lines[at - 1]?.trim() === '';
  if (held?.kind !== 'dish' || !blank) return [...topics];
  const isHeld = (topic: Topic) => topic.kind === 'dish' && topic.segmentId === held.segmentId;
  const others = topics.slice(0, at).some((topic) => topic.kind === 'dish' && !isHeld(topic));
  const later = topics.slice(at).some((topic) => topic.kind === 'dish' && !isHeld(topic));
  if (!others || later) return [...topics];
  const own = lines.slice(0, at).some((line, index) => {
    const topic = topics[index];
    return topic !== undefined && isHeld(topic) && energy.test(line);
  });
  const topic: Topic = own ? { kind: 'day' } : UNKNOWN_TOPIC;
  return topics.map((each, index) => (index === at ? topic : each));
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
