import type { Dish } from '#lib/episode/context';
import { isEatenSaid } from '#lib/episode/eaten-said';
import type { BlockContext } from '#lib/publish/description/block';
import type { ShownNumbers } from '#lib/publish/description/mark-notes';
import {
  capitalised,
  dayTitle,
  ENERGY_WORD,
  numbersLine,
} from '#lib/publish/description/numbers-line';
import { markOf } from '#lib/publish/number-mark';
import { lines, type Section } from '#lib/publish/document/document';
import type { NumbersToPublish } from '#lib/publish/from-lock';

/** Whether there is a sum to tell: of several dishes, or of one that is the whole day. */
export function hasDay({ publish, dishes }: Pick<BlockContext, 'publish' | 'dishes'>): boolean {
  return dishes.length > 1 || (dishes.length === 1 && publish.figures.dayIsWhole);
}

/** What all dishes come to. */
export function daySections(context: BlockContext): readonly Section[] {
  const { publish, dishes } = context;
  const { file, figures, numbers } = publish;
  if (!hasDay(context)) return [];
  const title = dayTitle(figures).toUpperCase();
  return [
    lines(
      [{ strong: title }, `: ${numbersLine(numbers, { kind: 'day' }, file.episode.region)}`],
      eatenLine(publish, dishes),
      notCountedLine(publish),
    ),
  ];
}

/**
 * `Calories eaten, kcal: Oat tray 704 + Soup 251†`: what each dish brings to the day. Where nobody has said how much was
 * eaten, it is all of what was made: `All that was made, calories, kcal: Oat tray 1408 + …`.
 */
export function eatenLine({ file, numbers }: NumbersToPublish, dishes: readonly Dish[]): string {
  const parts = dishes.map(({ id, title }) => {
    const energy = numbers('energyKcal', { kind: 'eaten', segmentId: id });
    return `${title} ${energy.number === null ? 'open' : energy.text + markOf(energy)}`;
  });
  const energy = ENERGY_WORD[file.episode.region];
  const of = isEatenSaid(file) ? `${capitalised(energy)} eaten` : `All that was made, ${energy}`;
  return `${of}, kcal: ${parts.join(' + ')}`;
}

/** The numbers that `eatenLine` shows. */
export function eatenNumbers(
  { file }: Pick<NumbersToPublish, 'file'>,
  dishes: readonly Dish[],
): readonly ShownNumbers[] {
  const part = isEatenSaid(file) ? 'eaten' : 'all of it';
  return dishes.map(({ id, title }): ShownNumbers => {
    const scope = { kind: 'eaten', segmentId: id } as const;
    return { title: `${title}, ${part}`, segmentId: id, scope, nutrients: ['energyKcal'] };
  });
}

/** What was eaten beside the dishes, in the person's words; empty where that is nothing or nobody said. */
export function notCountedLine({ file: { episode } }: NumbersToPublish): string {
  const { anythingElse } = episode;
  return anythingElse?.kind === 'notCounted' ? `Not counted: ${anythingElse.what}` : '';
}
