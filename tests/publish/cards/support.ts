import { readFileSync } from 'node:fs';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Card } from '#lib/publish/cards/card';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { correctionCard, swapCard } from '#lib/publish/cards/change-cards';
import type { CardColours } from '#lib/publish/cards/inks';
import { numbersToPublish } from '#lib/publish/from-lock';
import { widthAtMost } from '#lib/publish/picture-text';
import { DAY, NIGHT } from '../../../app/_ui/palette';

export const COLOURS: CardColours = {
  ...DAY,
  chalkSoft: DAY['chalk-soft'],
  handOnDark: NIGHT.hand,
  edge: NIGHT.slate,
};

/** The demo episode as its file has it. */
export function demo(): EpisodeFile {
  const read = parseEpisodeFile(readFileSync('seed/demo.episode.json', 'utf8'));
  if (!read.ok) throw new Error('the demo must be readable');
  return read.value;
}

/** The cards of an episode that was never locked, with a swap and a correction. */
export function draftCards(file: EpisodeFile = demo()): readonly Card[] {
  const change = { title: 'Barley skillet, one of two', before: '704', after: '725', unit: 'kcal' };
  return [
    ...cardsOf(numbersToPublish(file, null)),
    swapCard({ ...change, reason: 'about 20 calories more a portion' }, 'draft'),
    correctionCard({ ...change, reason: 'The peas were two cups.', on: '30 Nov' }, 'draft'),
  ];
}

/** A line of words as it stands in a drawing, in its units. */
export interface SetLine {
  readonly words: string;
  readonly left: number;
  readonly right: number;
  readonly base: number;
  readonly size: number;
}

/** The lines of words of a drawing, in the order in which they are drawn. */
export function linesIn(svg: string): readonly SetLine[] {
  const found = svg.matchAll(
    /<text x="([\d.-]+)" y="([\d.-]+)" font-family="([^"]+)" font-weight="600" font-size="([\d.]+)"[^>]*>([^<]*)<\/text>/g,
  );
  return [...found].map(([, x, y, family, size, text = '']) => {
    const words = text
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&');
    const face = family === 'Barlow Condensed' ? 'slate' : 'text';
    const left = Number(x);
    const right = left + widthAtMost(words, Number(size), face);
    return { words, left, right, base: Number(y), size: Number(size) };
  });
}
