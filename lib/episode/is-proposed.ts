import type { RecipeLine } from './recipe-schema';

/** Whether the food of an ingredient was only proposed: nobody has said yes to it. */
export const isProposed = ({ match, foodId }: Pick<RecipeLine, 'match' | 'foodId'>): boolean =>
  match === 'provisional' && foodId !== null;
