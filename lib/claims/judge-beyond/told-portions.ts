import { ENGLISH } from '#lib/claims/english/english';

/**
 * For how many a dish is by its own title, where that says so; null where it says nothing of the kind.
 * @example toldPortions('Supper (serves 1)') // 1
 */
export function toldPortions(title: string): number | null {
  const [, count = ''] = ENGLISH.patterns.servesSoMany.exec(title) ?? [];
  const number = ENGLISH.numbers.cardinals.get(count.toLowerCase()) ?? Number(count);
  return count !== '' && Number.isInteger(number) && number > 0 ? number : null;
}
