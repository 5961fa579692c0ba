import { leftOut } from './described';
import type { LeftOut } from './draft';
import type { Placed } from './placed';
import { saidAmounts } from './said-amounts';
import type { SpokenText } from './spoken';

/** One amount said in passing makes no dish: "next week it is 300 grams of cherries" (common practice, no source). */
const LEAST_LINES = 2;

/**
 * Dishes that no list gives ingredients get those that are said in their stretch; portions alike. A chapter that names
 * no dish is one where its ingredients are said, else talk.
 */
export function withAmounts(
  segments: readonly Placed[],
  spoken: SpokenText,
  left: LeftOut[],
): Placed[] {
  const dishes = segments.filter(({ kind }) => kind === 'recipe').length;
  return segments.map((segment) => {
    const { kind, lines, portions } = segment;
    if (kind === 'talk' || (lines.length > 0 && portions !== null)) return segment;
    const range = segment.said ?? (dishes === 1 ? { start: 0, end: spoken.text.length } : null);
    if (range === null) return segment;
    const said = saidAmounts(spoken, range.start, range.end);
    const wanted = said.left.filter(({ why }) =>
      why === 'amount' ? lines.length === 0 : portions === null,
    );
    left.push(...wanted.slice(0, 200));
    if (segment.isDoubtful && said.lines.length < LEAST_LINES) {
      const message = 'Said in a chapter that names no dish.';
      left.push(...said.lines.map(({ from }) => leftOut('amount', from, message)));
      return { ...segment, kind: 'talk' };
    }
    return {
      ...segment,
      lines: lines.length > 0 ? lines : said.lines.slice(0, 400),
      portions: portions ?? said.portions,
    };
  });
}
