import { energyRemark, type EnergyRemark } from '#lib/figures/energy-remark';
import type { NumberScope } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { BlockContext } from '#lib/publish/description/block';
import { isSaidAgainst, markOf } from '#lib/publish/number-mark';
import { lines, type Section } from '#lib/publish/document/document';

/** What numbers need said beside them: marks explained, and why macros do not make the calories. */
export function noteSections(context: BlockContext): readonly Section[] {
  return [
    lines(...roundingNote(context)),
    lines(...saidNotes(context)),
    lines(...energyNotes(context)),
  ];
}

function roundingNote({ publish, dishes }: BlockContext): string[] {
  const { figures, numbers } = publish;
  const scopes: NumberScope[] = [
    { kind: 'day' },
    ...dishes.map((dish) => ({ kind: 'whole', segmentId: dish.id }) as const),
  ];
  const starred = scopes.some((scope) =>
    figures.nutrients.some((nutrient) => markOf(numbers(nutrient, scope)) === '*'),
  );
  return starred ? ['* adds up only because of rounding'] : [];
}

/** What is meant by a number that was said and that the rest does not support: nothing of it is hidden. */
function saidNotes({ publish, dishes }: BlockContext): string[] {
  const { figures, numbers } = publish;
  const scopes: (readonly [string, NumberScope])[] = [
    ...dishes.flatMap((dish): (readonly [string, NumberScope])[] => [
      [dish.title, { kind: 'whole', segmentId: dish.id }],
      ...dish.recipe.portions.map(({ id, name }) => {
        return [`${dish.title}, ${name}`, { kind: 'portion', portionId: id }] as const;
      }),
    ]),
    [figures.dayIsWhole ? 'The whole day' : 'The dishes shown', { kind: 'day' }],
  ];
  return scopes.flatMap(([title, scope]) =>
    HEADLINE_NUTRIENTS.flatMap((nutrient) => {
      const number = numbers(nutrient, scope);
      if (!isSaidAgainst(number)) return [];
      const what = number.unit === 'kcal' ? '' : ` ${number.label}`;
      const why = number.said?.outside
        ? `by the ingredients it is ${number.range} ${number.unit}`
        : 'it does not add up with the other numbers that were said';
      return [
        `† ${title}: ${number.text} ${number.unit}${what} is what was said in the video; ${why}.`,
      ];
    }),
  );
}

/** How far macros and calories may be apart in what is published without a word about it, in kcal. */
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
  const title = figures.dayIsWhole ? 'The whole day' : 'The dishes shown';
  return remark ? [{ segmentId: null, title, remark }] : [];
}

/** Only where a reason is known: what nobody can explain is for the person to look into, not for the viewer. */
function energyNotes(context: BlockContext): string[] {
  return apartEnergy(context)
    .filter(({ remark }) => remark.reason !== null)
    .map(({ title, remark }) => `${title}: ${remark.words}`);
}
