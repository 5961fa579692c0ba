import { fold } from '#lib/units/plain-words';

/** What stands together without amounts at the end of a list, each a food of its own (common practice, no source). */
const SEASONINGS: ReadonlySet<string> = new Set(
  `salt|pepper|sugar|oil|olive oil|water|lemon|lime|vinegar|chilli|chili|chilli flakes|chili flakes|paprika|smoked paprika
  |cumin|coriander|oregano|thyme|rosemary|basil|parsley|dill|mint|chives|sage|nutmeg|cinnamon|turmeric|ginger
  |garlic|garlic powder|onion powder|cayenne|cayenne pepper|bay leaf|bay leaves|curry powder|herbs|spices|mixed herbs
  |black pepper|white pepper|sea salt|table salt`
    .split('|')
    .map((name) => name.trim()),
);
const ASIDE =
  /\b(?:freshly|ground|cracked|fresh|dried|flaky|fine|coarse|kosher|some|a|bit|pinch|dash|little|of)\b/g;
const BETWEEN = /\s*(?:,\s*(?:and\b|&)|[,+&/]|\band\b)\s*/giu;

/**
 * Where a line of seasonings without amounts is cut, one place before each sign between them; none where it is
 * anything else. One of them must be salt or pepper: 'sugar and cinnamon' may be a mixture, 'salt and vinegar crisps' is
 * no seasoning.
 * @example seasoningCuts('dill, salt + pepper') // [4, 9]
 */
export function seasoningCuts(line: string): readonly number[] {
  if (/\d/.test(line)) return [];
  const plain = line.replace(/[\s,(]*\bto (?:taste|season)\)?\s*$/i, '');
  const names = plain.split(BETWEEN).map((name) => fold(name).replace(ASIDE, ' ').trim());
  const all = names.map((name) => name.replace(/\s+/g, ' '));
  if (all.length < 2 || !all.every((name) => SEASONINGS.has(name))) return [];
  if (!all.some((name) => /\b(?:salt|pepper)$/.test(name))) return [];
  return [...plain.matchAll(BETWEEN)].map(({ index }) => index);
}

/** A part of a line without the sign that parts it from the one before: '+ pepper' → 'pepper'. */
export function withoutSign(text: string): string {
  return text.replace(/^(?:[,+&/]\s*|and\s+)+/i, '');
}
