import { v7 as uuid } from 'uuid';
import type { sharesOf } from '#lib/episode/reading-shares';
import type { ReadWeighing } from '#lib/episode/typed-weighing';
import type { Recipe, RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { Edit } from '#lib/store/command';

interface Kept {
  readonly recipeId: string;
  readonly kind: Weighing['kind'];
  readonly read: ReadWeighing;
  readonly scaleId: string;
  readonly afterId: string | null;
  readonly at: Date;
  readonly shares: ReturnType<typeof sharesOf>;
}

/** A reading with the ingredients that share it. One that waits for its second reading is a container's. */
export function readingEdits({ kind, read, shares, ...on }: Kept): readonly Edit[] {
  const id = uuid();
  const { waits, grossMg, tareMg, method } = read;
  const row = { id, kind: waits ? 'container' : kind, grossMg, tareMg, method, ...on } as const;
  return [
    { op: 'create', entity: 'Weighing', row },
    ...shares.map(({ lineId, share }, position): Edit => {
      const shared = { id: uuid(), weighingId: id, lineId, position };
      return {
        op: 'create',
        entity: 'WeighingShare',
        row: { ...shared, num: share.num, den: share.den },
      };
    }),
  ];
}

type Left = Pick<Extract<RecipeLine['leftBehind'], { kind: 'weighed' }>, 'where' | 'made'>;

/** Says of ingredients that what is left of them is weighed, where they don't say so yet. */
export function leftWeighedEdits(
  recipe: Recipe,
  lineIds: readonly string[],
  { where, made }: Left,
  revs: Readonly<Record<string, number>>,
): readonly Edit[] {
  return recipe.lines
    .filter(({ id }) => lineIds.includes(id))
    .filter(({ leftBehind: is }) => {
      return is.kind !== 'weighed' || is.where !== where || is.made !== made;
    })
    .map(({ id }) => ({
      op: 'update',
      entity: 'RecipeLine',
      id,
      rev: revs[id] ?? 0,
      patch: {
        leftKind: 'weighed',
        leftLowMg: null,
        leftMg: null,
        leftHighMg: null,
        leftWhere: where,
        leftMade: made,
      },
    }));
}
