import { chapterLines, chapterList } from '#lib/cut/chapters';
import type { BlockKind } from '#lib/episode/publish-schema';
import type { Block, BlockContext } from '#lib/publish/description/block';
import { correctionSections } from '#lib/publish/description/corrections-block';
import { daySections } from '#lib/publish/description/day-block';
import { dishSections } from '#lib/publish/description/dish-block';
import { noteSections } from '#lib/publish/description/notes-block';
import {
  allergenSections,
  cautionSections,
  disclosureSections,
} from '#lib/publish/description/safety-blocks';
import { sourceSections } from '#lib/publish/description/sources-block';
import { heading, lines, list, paragraphs, type Section } from '#lib/publish/document/document';

/** What each part of a layout says. */
export const BLOCKS: Readonly<Record<BlockKind, Block>> = {
  title: ({ publish }) => [heading(1, publish.file.episode.title)],
  hook: ({ publish }) => [paragraphs(publish.file.episode.hook)],
  chapters: chapterSections,
  dishes: dishSections,
  day: daySections,
  notes: noteSections,
  swaps: ({ swaps }) => titled('Swaps', swaps),
  allergens: allergenSections,
  cautions: cautionSections,
  disclosure: disclosureSections,
  links: ({ publish }) => [lines(...publish.file.episode.webLinks.map((link) => [link]))],
  corrections: correctionSections,
  sources: sourceSections,
};

function titled(title: string, items: readonly string[]): readonly Section[] {
  const told = list(items);
  return told.length === 0 ? [] : [[...heading(2, title), ...told]];
}

/** No list at all where a rule of chapters is broken: half of one would be taken for the whole. */
function chapterSections({ publish }: BlockContext): readonly Section[] {
  const { chapters, faults } = chapterList(publish.file.episode);
  return faults.length > 0 ? [] : [lines(...chapterLines(chapters))];
}
