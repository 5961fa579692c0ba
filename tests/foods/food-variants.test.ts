import { describe, expect, test } from 'vitest';
import type { Section } from '#lib/foods/food';
import { isVariant, saysOther, variantKey, variantWords } from '#lib/foods/food-variants';

const food = (name: string, section: Section = 'dairyAndEggs') => ({ id: name, name, section });

// Names as the reference table writes them (USDA National Nutrient Database for Standard Reference, release 28).
describe('foods that are the same but for how fat they are', () => {
  test.each([
    ['Cheese, mozzarella, whole milk', 'Cheese, mozzarella, part skim milk', 'dairyAndEggs'],
    ['Yogurt, Greek, plain, nonfat', 'Yogurt, Greek, plain, whole milk', 'dairyAndEggs'],
    [
      'Milk, whole, 3.25% milkfat, with added vitamin D',
      'Milk, reduced fat, fluid, 2% milkfat, with added vitamin A and vitamin D',
      'dairyAndEggs',
    ],
    [
      'Beef, ground, 80% lean meat / 20% fat, raw',
      'Beef, ground, 93% lean meat / 7% fat, raw',
      'meatAndFish',
    ],
    ['Fish, sardine, canned in oil', 'Fish, sardine, canned in water', 'meatAndFish'],
  ] as const)('are %s and %s', (one, other, section) => {
    expect(isVariant(food(one, section), food(other, section))).toBe(true);
    expect(isVariant(food(other, section), food(one, section))).toBe(true);
  });

  test.each([
    ['Cheese, mozzarella, whole milk', 'Cheese, ricotta, part skim milk', 'dairyAndEggs'],
    [
      'Cheese, mozzarella, whole milk',
      'Cheese, mozzarella, low moisture, part-skim',
      'dairyAndEggs',
    ],
    [
      'Beef, ground, 80% lean meat / 20% fat, raw',
      'Pork, ground, 96% lean / 4% fat, raw',
      'meatAndFish',
    ],
    [
      'Beef, ground, 80% lean meat / 20% fat, raw',
      'Beef, ground, 93% lean meat / 7% fat, patty, cooked, broiled',
      'meatAndFish',
    ],
    ['Corn, sweet, white', 'Corn, sweet, whole', 'produce'],
  ] as const)('are not %s and %s', (one, other, section) => {
    expect(isVariant(food(one, section), food(other, section))).toBe(false);
  });

  test('a food is no variant of itself; what a name says of its fat is told in its words', () => {
    const milk = food('Milk, reduced fat, fluid, 2% milkfat, with added vitamin A and vitamin D');
    expect(isVariant(milk, milk)).toBe(false);
    expect(variantWords(milk)).toBe('reduced fat, 2% milkfat');
    expect(variantKey(milk)).toBe('milk');
    expect(variantWords(food('Egg, whole, raw, fresh', 'other'))).toBe('');
  });

  test('an ingredient whose own words say the other is told apart', () => {
    const [whole, part] = [
      food('Cheese, mozzarella, whole milk'),
      food('Cheese, mozzarella, part skim milk'),
    ];
    expect(saysOther('90 g part-skim mozzarella', whole, part)).toBe(true);
    expect(saysOther('90 g part-skim mozzarella', part, whole)).toBe(false);
    expect(saysOther('90 g mozzarella', whole, part)).toBe(false);
  });
});
