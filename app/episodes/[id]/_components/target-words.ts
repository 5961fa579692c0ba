import type { Choice } from '../../../_ui/form/field';
import type { Target } from '#lib/episode/schema';
import type { Figures } from '#lib/figures/episode-figures';
import { aboutReach, LIMIT_WORDS } from '#lib/figures/limit-words';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printGrams } from '#lib/units/print';
import type { EpisodeView } from './view';

/** Where a target holds, as one choice: all dishes, a dish, or a dish and one of its portions. */
export function scopeValue({
  segmentId,
  portionId,
}: Pick<Target, 'segmentId' | 'portionId'>): string {
  return [segmentId, portionId].filter((id) => id !== null).join(' ');
}

export function scopeChoices(view: EpisodeView, kept: string | null = null): readonly Choice[] {
  return [
    { value: '', words: 'all dishes, as far as they count to the day' },
    ...view.file.episode.segments
      .filter(({ id, recipe }) => recipe !== null || id === kept)
      .flatMap(({ id, title, recipe }) => [
        { value: id, words: title },
        ...(recipe?.portions ?? []).map((portion) => ({
          value: scopeValue({ segmentId: id, portionId: portion.id }),
          words: `${title}, ${portionWords(portion)}`,
        })),
      ]),
  ];
}

type Portion = NonNullable<
  EpisodeView['file']['episode']['segments'][number]['recipe']
>['portions'][number];

function portionWords(portion: Portion): string {
  if (portion.kind === 'count') return `one of ${portion.of}`;
  if (portion.kind === 'byEye') return `${portion.name || 'a portion'}, by eye`;
  return `${portion.name || 'a portion'} of ${printGrams(portion.massMg)} g`;
}

/** The figures that a target is held against. */
export function figuresFor(view: EpisodeView, target: Target): Figures | undefined {
  if (target.segmentId === null) return view.figures.day;
  const dish = view.figures.dishes.find(({ segmentId }) => segmentId === target.segmentId);
  if (target.portionId === null) return dish?.whole;
  return dish?.portions.find(({ portionId }) => portionId === target.portionId)?.figures;
}

/** A target in words: "Skillet, one of 2: about 640 kcal calories". */
export function targetWords(view: EpisodeView, target: Target): string {
  const segment = view.file.episode.segments.find(({ id }) => id === target.segmentId);
  const portion = segment?.recipe?.portions.find(({ id }) => id === target.portionId);
  const dish = segment ? segment.title : 'all dishes';
  const scope = portion ? `${dish}, ${portionWords(portion)}` : dish;
  const limit = LIMIT_WORDS[target.relation];
  return `${scope}: ${limit} ${target.amount} ${nutrientWords(view, target.nutrient)}`;
}

/** From where to where a target reaches that is "about" a number; null for the others, which say it themselves. */
export function reachWords({ relation, nutrient, amount }: Target): string | null {
  return relation === 'about' ? aboutReach(nutrient, amount) : null;
}

/** A nutrient with its unit, called as it is beside the day's number. */
export function nutrientWords(view: EpisodeView, nutrient: Nutrient): string {
  const { unit, label } = NUTRIENTS[nutrient];
  const counted = view.figures.day[nutrient] !== undefined;
  return `${unit} ${counted ? view.numbers(nutrient, { kind: 'day' }).label : label}`;
}
