/** Words in -ies whose singular ends in -ie. */
const KEPT_IE: ReadonlySet<string> = new Set(['cookies', 'brownies', 'smoothies', 'calories']);

/** Lower case without accents: 'Crème' → 'creme'. */
export function fold(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

/**
 * The singular of a folded English word, by rule of its ending; short words and words in -ss, -us and -is
 * stay. `singular('tomatoes')` → `'tomato'`, `singular('berries')` → `'berry'`, `singular('leaves')` → `'leaf'`.
 */
export function singular(word: string): string {
  if (word.length < 4 || !word.endsWith('s') || /(ss|us|is)$/.test(word)) return word;
  if (word === 'leaves' || word === 'loaves' || word === 'halves') {
    return `${word.slice(0, -3)}f`;
  }
  if (KEPT_IE.has(word)) return word.slice(0, -1);
  if (word.endsWith('ies') && word.length > 4) return `${word.slice(0, -3)}y`;
  if (/(oes|ches|shes|xes|sses|zes)$/.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}
