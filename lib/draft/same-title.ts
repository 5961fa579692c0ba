import { words } from '#lib/foods/search-text';

/** Words of titles that name no dish. */
const EMPTY: ReadonlySet<string> = new Set(
  'my our your this that these recipe dish meal easy simple quick best ultimate how make making'.split(
    ' ',
  ),
);

/** The words of a title by which a dish is known. */
export function titleStems(title: string): string[] {
  const stems = words(title).map(({ stem }) => stem);
  const named = stems.filter((stem) => !EMPTY.has(stem) && !/^\d+$/.test(stem));
  return [...new Set(named.length > 0 ? named : stems)];
}

/** How much two titles share: 1 where all words of the shorter one are in the longer, 0 where none are. */
export function titlesShare(a: readonly string[], b: readonly string[]): number {
  if (a.length === 0 || b.length === 0) return 0;
  const shared = a.filter((stem) => b.includes(stem)).length;
  const least = shared / Math.min(a.length, b.length);
  // One word of many that two titles have in common names neither.
  return Math.min(a.length, b.length) === 1 && Math.max(a.length, b.length) > 4 ? least / 2 : least;
}

/** The one of several titles that a title means: it shares most, and more than half; -1 where none or two do. */
export function titleMeant(title: string, among: readonly (readonly string[])[]): number {
  const stems = titleStems(title);
  const rated = among
    .map((other, index) => ({
      index,
      share: titlesShare(stems, other),
      count: stems.filter((stem) => other.includes(stem)).length,
    }))
    .filter(({ share }) => share > 0.5)
    .sort((a, b) => b.count - a.count || b.share - a.share);
  const [first, second] = rated;
  if (!first || (second && second.count === first.count && second.share === first.share)) return -1;
  return first.index;
}
