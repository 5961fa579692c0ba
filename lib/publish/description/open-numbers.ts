import { isEatenSaid } from '#lib/episode/eaten-said';
import type { BlockContext } from '#lib/publish/description/block';
import { openReason } from '#lib/publish/description/numbers-line';

/** A dish or day whose numbers cannot all be given, with the reason; the rest stays copyable. */
export interface OpenNumber {
  readonly segmentId: string | null;
  readonly title: string;
  readonly reason: string;
}

/** All that is open in a description, dish by dish, the day last. */
export function openNumbers({ publish, dishes }: BlockContext): readonly OpenNumber[] {
  const { numbers, figures, file } = publish;
  const open = dishes.flatMap((dish): OpenNumber[] => {
    const whole = openReason(numbers, { kind: 'whole', segmentId: dish.id });
    if (whole !== null) return [{ segmentId: dish.id, title: dish.title, reason: whole }];
    return dish.recipe.portions.flatMap((portion) => {
      const reason = openReason(numbers, { kind: 'portion', portionId: portion.id });
      const title = `${dish.title}, ${portion.name}`;
      return reason === null ? [] : [{ segmentId: dish.id, title, reason }];
    });
  });
  if (figures.dayIsWhole || file.episode.anythingElse !== null) return open;
  const whole = isEatenSaid(file) ? '' : ', and has all that was made until you have said how much';
  return [
    ...open,
    {
      segmentId: null,
      title: 'The day',
      reason: `it reads "the dishes shown" until you have said what else was eaten that day${whole}`,
    },
  ];
}
