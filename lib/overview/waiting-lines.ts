import type { AmountGap } from '#lib/episode/eaten-amount';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { LineFigures } from '#lib/figures/episode-figures';
import { figureStatus, type MissingPart } from '#lib/figures/figure';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';

/**
 * What an ingredient waits for: the person's word on its food, what its grams need; or of one that is a dish, that
 * dish's finished weight, an end to its ring, or something within it.
 */
export type Waiting = 'confirm' | AmountGap | 'noDivisor' | 'cycle' | 'within';

export interface WaitingLine {
  readonly line: RecipeLine;
  readonly figures: LineFigures;
  readonly waits: Waiting;
  /** False where the headline numbers are known without it, as for salt to taste. */
  readonly counts: boolean;
}

/**
 * The ingredients of a dish that wait for the person, in their order. One that has neither a confirmed food nor
 * grams waits for its food first.
 * @example waitingLines(recipe.lines, figures.lines)[0]?.waits // 'confirm'
 */
export function waitingLines(
  lines: readonly RecipeLine[],
  figures: readonly LineFigures[],
): readonly WaitingLine[] {
  const byId = new Map(figures.map((each) => [each.lineId, each]));
  return lines.flatMap((line): WaitingLine[] => {
    const of = byId.get(line.id);
    if (!of) return [];
    const confirm = line.match === 'provisional' && of.foodName !== null ? 'confirm' : null;
    const waits = confirm ?? of.gap ?? nestedWait(line, of);
    if (waits === null) return [];
    const counts = HEADLINE_NUTRIENTS.some((nutrient) => {
      const figure = of.figures[nutrient];
      return figure !== undefined && figureStatus(figure) !== 'known';
    });
    return [{ line, figures: of, waits, counts }];
  });
}

/** What a person can do something about; a value that no source states is none of it. */
const MENDED_WITHIN: ReadonlySet<MissingPart['reason']> = new Set([
  'noLines',
  'noFood',
  'noGrams',
  'states',
  'leftBehind',
  'leftNotWeighed',
  'noDivisor',
  'cycle',
]);

function nestedWait({ id, madeFrom }: RecipeLine, { figures }: LineFigures): Waiting | null {
  if (!madeFrom) return null;
  const headline = HEADLINE_NUTRIENTS.flatMap((nutrient) => figures[nutrient] ?? []);
  const missing = headline.flatMap((figure) => figure.missing);
  const own = missing.find(({ lineId }) => lineId === id)?.reason;
  if (own === 'noDivisor' || own === 'cycle') return own;
  const within =
    missing.some(({ lineId, reason }) => lineId !== id && MENDED_WITHIN.has(reason)) ||
    headline.some(({ provisional }) => provisional.length > 0);
  return within ? 'within' : null;
}
