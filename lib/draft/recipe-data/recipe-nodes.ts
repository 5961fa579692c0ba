import type { JsonNode } from './json-places';

/** An object of JSON. */
export type JsonObject = Extract<JsonNode, { readonly kind: 'object' }>;

/** A property of an object, `null` in JSON taken for none. */
export function property(node: JsonObject, name: string): JsonNode | null {
  const found = node.entries.get(name);
  return !found || (found.kind === 'word' && found.value === null) ? null : found;
}

/** The values of a property: one or a list of them alike, as JSON-LD means them. */
export function valuesOf(node: JsonObject, ...names: readonly string[]): readonly JsonNode[] {
  for (const name of names) {
    const found = property(node, name);
    if (found) return found.kind === 'list' ? found.items : [found];
  }
  return [];
}

/** The words of a value: a text, a number, or a text with its language (`@value`); null for anything else. */
export function wordsOf(node: JsonNode): string | null {
  if (node.kind === 'text') return node.value;
  if (node.kind === 'number') return String(node.value);
  if (node.kind !== 'object') return null;
  const value = property(node, '@value');
  return value ? wordsOf(value) : null;
}

/** Whether an object says that it is of a type, by whichever of the vocabulary's names. */
export function isOfType(node: JsonObject, type: string): boolean {
  return valuesOf(node, '@type', 'type').some((each) => {
    return (
      each.kind === 'text' &&
      new RegExp(`^(?:https?://schema\\.org/|schema:)?${type}$`).test(each.value)
    );
  });
}

/** Every recipe, wherever it stands: alone, in lists, in a graph, within other things. */
export function recipesIn(root: JsonNode): JsonObject[] {
  const found: JsonObject[] = [];
  const rest: JsonNode[] = [root];
  for (let node = rest.pop(); node; node = rest.pop()) {
    if (node.kind === 'list') rest.push(...node.items.toReversed());
    if (node.kind !== 'object') continue;
    if (isOfType(node, 'Recipe')) found.push(node);
    else rest.push(...[...node.entries.values()].reverse());
  }
  return found;
}
