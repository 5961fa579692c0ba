import { readIngredient } from '#lib/episode/read-ingredient';

/**
 * Whether words begin with an amount of what they name: "2 eggs", "half a cucumber".
 * @example beginsWithAmount('Feta (30 g)') // false
 */
export function beginsWithAmount(words: string): boolean {
  if (/^[\d½¼¾⅓⅔⅛]/u.test(words)) return true;
  if (!/^(?:an?|one|two|three|four|five|six|half|some|few|several)\s/i.test(words)) return false;
  const [part] = readIngredient(words.slice(0, 120));
  return part !== undefined && part.quantity !== null;
}
