import { expect, test } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { takeLock } from '#lib/lock/numbers-lock';
import { numbersToPublish } from '#lib/publish/from-lock';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const soup = (id: string) =>
  aDish(id, aRecipe(`r-${id}`, [grams(`leek ${id}`, 'f', 100)]), { title: 'Soup' });
const file = aFile([soup('one'), soup('two')], [aFood('f', { energyKcal: '100' })]);
const { snapshot } = takeLock(file);

test('of two dishes of one title only the one that was changed is named', () => {
  const other = structuredClone(file);
  const [line] = dishesOf(other.episode.segments)[1]?.recipe.lines ?? [];
  if (line) line.planned = { lowMg: 150_000, valueMg: 150_000, highMg: 150_000 };
  const { changed } = numbersToPublish(other, snapshot);
  expect(changed?.dishes).toEqual([
    { segmentId: 'two', title: 'Soup', kind: 'touched', words: '100 → 150 kcal' },
  ]);
});

test('a change that moves no number is found in a dish that has another title now', () => {
  const other = structuredClone(file);
  const dish = dishesOf(other.episode.segments)[0];
  if (dish) dish.title = 'Leek soup';
  dish?.recipe.portions.push({ id: 'p', kind: 'count', name: 'a half', of: 2 });
  const { changed } = numbersToPublish(other, snapshot);
  expect(changed?.dishes.map(({ segmentId }) => segmentId)).toEqual(['one']);
});
