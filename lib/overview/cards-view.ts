import { KIND_WORDS, cardWords } from '#lib/publish/cards/card-words';
import type { CardFile } from '#lib/publish/cards/card-files';
import { placeWords, type CardPlaces } from '#lib/publish/cards/card-places';
import { cardFrame, THUMBNAIL_SIZE, type CutSize } from '#lib/publish/cards/frame';

/** One picture as its page lists it. */
export interface CardView {
  readonly name: string;
  /** "numbers, 2 of 3". */
  readonly what: string;
  readonly title: string;
  /** All that stands on it. */
  readonly words: string;
  readonly width: number;
  readonly height: number;
  /** Where it goes: "00:00:45:00 to 00:00:50:00", "no place yet: …"; null where it is not in the cut. */
  readonly place: string | null;
  readonly placed: boolean;
  /** Letters that the fonts lack. */
  readonly lost: readonly string[];
}

/** Pictures under one heading. */
export interface CardGroup {
  readonly key: string;
  readonly title: string;
  readonly cards: readonly CardView[];
}

/** The pictures of an episode, those of each dish together, the day and what belongs to no dish at the end. */
export function cardGroups(
  files: readonly CardFile[],
  places: CardPlaces,
  dishes: readonly { readonly id: string; readonly title: string }[],
  size: CutSize,
): readonly CardGroup[] {
  const groups = dishes.map(({ id, title }): CardGroup => ({
    ...{ key: id, title },
    cards: viewsOf(
      files.filter(({ card }) => card.segmentId === id),
      places,
      size,
    ),
  }));
  const own = new Set(dishes.map(({ id }) => id));
  const rest = files.filter(({ card }) => card.segmentId === null || !own.has(card.segmentId));
  return [
    ...groups,
    { key: 'episode', title: 'The whole episode', cards: viewsOf(rest, places, size) },
  ].filter(({ cards }) => cards.length > 0);
}

function viewsOf(files: readonly CardFile[], { places, rate }: CardPlaces, size: CutSize) {
  return files.map((file): CardView => {
    const { card, name, page, of } = file;
    const frame = cardFrame(card.kind === 'thumbnail' ? THUMBNAIL_SIZE : size);
    const place = places.find((each) => each.file === file);
    const at = place ? placeWords(place, rate) : null;
    const part = of > 1 ? `, ${page} of ${of}` : '';
    const kind = KIND_WORDS[card.kind];
    return {
      name,
      what: kind + part,
      title: card.title === '' ? card.kicker : card.title,
      words: `${kind}${part}: ${cardWords(card)}`,
      ...{ width: frame.width, height: frame.height },
      place: place ? (at ? `${at.from} to ${at.to}` : `no place yet: ${place.why ?? ''}`) : null,
      placed: at !== null,
      lost: card.lost,
    };
  });
}
