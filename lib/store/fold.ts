/**
 * Text as it is searched and compared: without accents, in lower case, single spaces.
 * `folded('  Crème  FRAÎCHE ')` → `'creme fraiche'`.
 */
export function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}
