import type { EpisodeFile } from '#lib/episode/schema';

/**
 * A file with its ids replaced by the order in which they are met, so that two files that differ only in
 * the names of things become the same. Foods are a set: they are put in order of their names first.
 */
export function upToIds(file: EpisodeFile): unknown {
  const names = new Map<string, string>();
  const numbered = (id: string) => {
    const known = names.get(id);
    if (known) return known;
    names.set(id, `#${names.size}`);
    return `#${names.size - 1}`;
  };
  const walk = (value: unknown, key: string): unknown => {
    if (typeof value === 'string') return /^id$|Ids?$/.test(key) ? numbered(value) : value;
    if (Array.isArray(value)) return value.map((part) => walk(part, key));
    if (typeof value !== 'object' || value === null) return value;
    const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
    return Object.fromEntries(entries.map(([name, part]) => [name, walk(part, name)]));
  };
  const foods = [...file.foods].sort((a, b) => (a.name < b.name ? -1 : 1));
  const order = new Map(foods.map((food, at) => [food.id, at]));
  const byFood = <T extends { foodId: string }>(rows: readonly T[]) =>
    [...rows].sort((a, b) => (order.get(a.foodId) ?? 0) - (order.get(b.foodId) ?? 0));
  return walk({ ...file, foods, stock: byFood(file.stock), packs: byFood(file.packs) }, '');
}
