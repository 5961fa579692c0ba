import type { AllergenEntry } from '#lib/publish/allergen-list';
import { ALLERGEN_CAUTION, cautions } from '#lib/publish/cautions';
import type { BlockContext } from '#lib/publish/description/block';
import { lines, paragraphs, type Section } from '#lib/publish/document/document';

/** Allergens of the region's list; where none is known nothing is said, which is not the same as none. */
export function allergenSections({ publish }: BlockContext): readonly Section[] {
  const { contains, mayContain } = publish.allergens;
  if (contains.length + mayContain.length === 0) return [];
  const words = (entries: readonly AllergenEntry[]) =>
    entries.map((entry) => entry.words).join(', ');
  return [
    lines(
      contains.length > 0 ? `Allergens: contains ${words(contains)}.` : '',
      mayContain.length > 0 ? `May contain ${words(mayContain)}.` : '',
      ALLERGEN_CAUTION,
    ),
  ];
}

export function cautionSections({ publish, shown }: BlockContext): readonly Section[] {
  return [lines(...cautions(publish.file, { sourcesNamed: shown.has('sources') }))];
}

/** Something was given or paid: in the person's own words (16 CFR 255.5). */
export function disclosureSections({ publish }: BlockContext): readonly Section[] {
  return [paragraphs(publish.file.episode.disclosure)];
}
