/** Words in capitals that are no brand: bodies, abbreviations, grains and places as SR28 writes them. */
const NOT_BRANDS: ReadonlySet<string> = new Set([
  'USDA',
  'USA',
  'BBQ',
  'DHA',
  'ARA',
  'UHT',
  'NFS',
  'NFSMI',
  'MSG',
  'BLT',
  'B.L.T.',
  'KAMUT',
  'EMI-TSUNOMATA',
  'AND',
  'WITH',
]);

/**
 * Whether a reference food's name names a brand or a restaurant: it has a word of three or more letters in
 * capitals (SR28 writes brands so), other than a short list of abbreviations. A heuristic: brands written
 * otherwise are not found.
 * `namesBrand("Candies, HERSHEY'S, milk chocolate")` → true; `namesBrand('Pork, BBQ')` → false.
 */
export function namesBrand(name: string): boolean {
  for (const word of name.match(/[A-Z][A-Z&.'’-]*[A-Z.]/g) ?? []) {
    if (word.replace(/[^A-Z]/g, '').length >= 3 && !NOT_BRANDS.has(word)) return true;
  }
  return false;
}
