import { energyRemark, type EnergyRemark } from '#lib/figures/energy-remark';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { BlockContext } from '#lib/publish/description/block';
import { eatenNumbers, hasDay } from '#lib/publish/description/day-block';
import { markNotes, type ShownNumbers } from '#lib/publish/description/mark-notes';
import { dayTitle, lineNutrients } from '#lib/publish/description/numbers-line';
import type { Section } from '#lib/publish/document/document';

/** What numbers need said beside them: their marks explained. */
export function noteSections(context: BlockContext): readonly Section[] {
  return markNotes(context.publish, shownIn(context));
}

/** All numbers that a description shows: of its dishes and their portions, of the day and what was eaten of each. */
function shownIn(context: BlockContext): readonly ShownNumbers[] {
  const { publish, dishes, dishParts, shown } = context;
  const { numbers, figures, file } = publish;
  const parts = shown.has('dishes') ? dishParts : [];
  const ofLine = (title: string, segmentId: string | null, scope: NumberScope): ShownNumbers => {
    const nutrients = lineNutrients(numbers, scope, file.episode.region);
    return { title, segmentId, scope, nutrients };
  };
  const ofDishes = dishes.flatMap(({ id, title, recipe }) => [
    ...(parts.includes('whole') ? [ofLine(title, id, { kind: 'whole', segmentId: id })] : []),
    ...(parts.includes('portions') ? recipe.portions : []).map((portion) =>
      ofLine(`${title}, ${portion.name}`, id, { kind: 'portion', portionId: portion.id }),
    ),
  ]);
  if (!shown.has('day') || !hasDay(context)) return ofDishes;
  const day = dayTitle(figures);
  return [...ofDishes, ...eatenNumbers(publish, dishes), ofLine(day, null, { kind: 'day' })];
}

/** How far macros and calories may be apart in what is published without a word to its author, in kcal. */
const WITHOUT_A_WORD = 10;

/** A dish or day whose printed macros do not make its printed calories. */
export interface ApartEnergy {
  readonly segmentId: string | null;
  readonly title: string;
  readonly remark: EnergyRemark;
}

/**
 * Where published macros miss the published calories by more than 10 kcal by 4, 4 and 9 a gram. The day is told only
 * where no dish of it is, since its reason would be theirs.
 */
export function apartEnergy({ publish, dishes }: BlockContext): readonly ApartEnergy[] {
  const { file, figures, numbers } = publish;
  const remarkOf = (scope: NumberScope) => {
    const remark = energyRemark(file, figures, numbers, scope);
    return remark && Math.abs(remark.given - remark.printed) > WITHOUT_A_WORD ? remark : null;
  };
  const told = dishes.flatMap(({ id, title }): ApartEnergy[] => {
    const remark = remarkOf({ kind: 'whole', segmentId: id });
    return remark ? [{ segmentId: id, title, remark }] : [];
  });
  if (told.length > 0 || dishes.length < 2) return told;
  const remark = remarkOf({ kind: 'day' });
  const title = dayTitle(figures);
  return remark ? [{ segmentId: null, title, remark }] : [];
}
