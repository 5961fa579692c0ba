import { amountContext, dishesOf, type AmountContext, type Dish } from '#lib/episode/context';
import type { BlockKind, DishPart } from '#lib/episode/publish-schema';
import type { Section } from '#lib/publish/document/document';
import type { NumbersToPublish } from '#lib/publish/from-lock';

/** What every block of a description is made of. */
export interface BlockContext {
  readonly publish: NumbersToPublish;
  readonly dishes: readonly Dish[];
  readonly amounts: AmountContext;
  /** Which parts a dish has, in their order. */
  readonly dishParts: readonly DishPart[];
  /** Which blocks the description has beside this one. */
  readonly shown: ReadonlySet<BlockKind>;
  /** One line for each saved swap. */
  readonly swaps: readonly string[];
  /** One text for each correction, the newest first. */
  readonly corrections: readonly string[];
}

/** A block as sections of its own; none where it has nothing to say. */
export type Block = (context: BlockContext) => readonly Section[];

export function blockContext(
  publish: NumbersToPublish,
  more: Pick<BlockContext, 'dishParts' | 'shown' | 'swaps' | 'corrections'>,
): BlockContext {
  const { file } = publish;
  return {
    publish,
    dishes: dishesOf(file.episode.segments),
    amounts: amountContext(file),
    ...more,
  };
}
