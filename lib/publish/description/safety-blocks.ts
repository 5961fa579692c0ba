import type { AllergenEntry } from '#lib/publish/allergen-list';
import { ALLERGEN_CAUTION, ALLERGENS_UNCHECKED, cautions } from '#lib/publish/cautions';
import type { BlockContext } from '#lib/publish/description/block';
import { lines, paragraphs, type Section } from '#lib/publish/document/document';
import type { NumbersToPublish } from '#lib/publish/from-lock';

/** Allergens of the region's list. */
export function allergenSections({ publish }: BlockContext): readonly Section[] {
  return [allergenLines(publish, 'Allergens: contains')];
}

/**
 * What is declared or confirmed, what may be in it, and the caution; while proposals wait for the person's word, that
 * the list is not complete, and no word of what they are. Where none is known or proposed nothing is said, which is not
 * the same as none.
 * @param lead what stands before those that are in it
 * @example allergenLines(publish, 'Allergens: contains') // 'Allergens: contains milk.' and the caution
 */
export function allergenLines(
  { allergens: { contains, mayContain, proposed } }: Pick<NumbersToPublish, 'allergens'>,
  lead: string,
): Section {
  if (contains.length + mayContain.length + proposed.length === 0) return [];
  const named = (entries: readonly AllergenEntry[]) => entries.map((each) => each.words).join(', ');
  return lines(
    contains.length > 0 ? `${lead} ${named(contains)}.` : '',
    mayContain.length > 0 ? `May contain ${named(mayContain)}.` : '',
    proposed.length > 0 ? ALLERGENS_UNCHECKED : ALLERGEN_CAUTION,
  );
}

export function cautionSections({ publish, shown }: BlockContext): readonly Section[] {
  return [lines(...cautions(publish.file, { sourcesNamed: shown.has('sources') }))];
}

/** Something was given or paid: in the person's own words (16 CFR 255.5). */
export function disclosureSections({ publish }: BlockContext): readonly Section[] {
  return [paragraphs(publish.file.episode.disclosure)];
}
