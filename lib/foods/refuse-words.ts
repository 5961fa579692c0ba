import type { Food } from '#lib/foods/food';

/** Peel and trim of a food in few words; null where its source names none. `'5 % (ends)'`. */
export function refuseText(refuse: Food['version']['refuse']): string | null {
  if (!refuse || refuse.percent === 0) return null;
  return refuse.text === '' ? `${refuse.percent} %` : `${refuse.percent} % (${refuse.text})`;
}

/**
 * What becomes of grams with peel, shell or bone, and of grams without: which of the two is taken off, and when.
 * @example refuseWords(zucchini) // 'Ticked, 5 % (ends) come off before it counts: 100 g count as 95 g. …'
 */
export function refuseWords(food: Pick<Food, 'version'> | null): string {
  if (!food) return 'What comes off is known once a food is chosen.';
  const { refuse } = food.version;
  const text = refuseText(refuse);
  if (!refuse || text === null) {
    return 'Its source names no peel, shell or bone: ticked or not, the grams count as they are.';
  }
  const edible = 100 - refuse.percent;
  if (!refuse.inValues) {
    return (
      `Ticked, ${text} come off before it counts: 100 g count as ${edible} g. ` +
      'Not ticked, the grams are of what is eaten. Shopping buys it with them either way.'
    );
  }
  return (
    `The values of this food are for it with ${text}: ticked, the grams count as they are. ` +
    `Not ticked, ${edible} g of what is eaten count as 100 g. It is never taken off twice.`
  );
}
