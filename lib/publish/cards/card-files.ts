import type { Card } from '#lib/publish/cards/card';
import { drawCard, type CardLook } from '#lib/publish/cards/draw-card';
import { THUMBNAIL_SIZE, type CutSize } from '#lib/publish/cards/frame';
import { plainName } from '#lib/units/plain-name';

/** One picture of a card with its file's name. */
export interface CardFile {
  readonly card: Card;
  /** Without its ending: "01-barley-skillet-macros-1920x1080". */
  readonly name: string;
  /** Which picture of the card it is, from 1, and of how many. */
  readonly page: number;
  readonly of: number;
  readonly svg: string;
}

/** Cards of the cut in its size, those that stand for the video in theirs. */
export interface FilesLook extends Omit<CardLook, 'size'> {
  readonly size: CutSize;
}

/** How much of a name's beginning is kept, so that what it is of stays readable at its end. */
const LONGEST = 60;

/**
 * The pictures of cards with their names, in running order: a place of two digits or more, what it shows, "2-of-3" where
 * it goes on, the size.
 * Law: no two names are alike, and in the order of their names they are in running order.
 */
export function cardFiles(cards: readonly Card[], look: FilesLook): readonly CardFile[] {
  return cards.flatMap((_, index) => filesOf(cards, index, look));
}

/**
 * The one picture of that name, for which no other card is laid out; null where there is none.
 * Law: it is the one that `cardFiles` has under that name.
 * @example cardFileNamed(cards, '01-barley-skillet-macros-1920x1080', look)?.page // 1
 */
export function cardFileNamed(
  cards: readonly Card[],
  name: string,
  look: FilesLook,
): CardFile | null {
  const index = Number(/^\d+/.exec(name)?.[0] ?? 0) - 1;
  return filesOf(cards, index, look).find((file) => file.name === name) ?? null;
}

function filesOf(cards: readonly Card[], index: number, look: FilesLook): readonly CardFile[] {
  const card = cards[index];
  if (!card) return [];
  const size = card.kind === 'thumbnail' ? THUMBNAIL_SIZE : look.size;
  const pages = drawCard(card, { ...look, size });
  const places = Math.max(2, String(cards.length).length);
  const place = String(index + 1).padStart(places, '0');
  const what = plainName(card.name).slice(0, LONGEST) || card.kind;
  return pages.map((svg, at) => {
    const part = pages.length > 1 ? `-${at + 1}-of-${pages.length}` : '';
    return { card, svg, page: at + 1, of: pages.length, name: `${place}-${what}${part}-${size}` };
  });
}
