import 'server-only';
import type { Card } from '#lib/publish/cards/card';
import { cardFileNamed, cardFiles, type CardFile } from '#lib/publish/cards/card-files';
import { cardPlaces, type CardPlaces } from '#lib/publish/cards/card-places';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { placesCsv } from '#lib/publish/cards/places-csv';
import { placesOtio } from '#lib/publish/cards/places-otio';
import { placesVtt } from '#lib/publish/cards/places-vtt';
import { cardsOfCorrection, cardsOfSwaps } from '#lib/publish/cards/saved-changes';
import { numbersToPublish, type NumbersToPublish } from '#lib/publish/from-lock';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLastLock } from '#lib/store/read-locks';
import { swapTable } from '#lib/swap/swap-words';
import { ownCorrections } from '../corrections/told-correction';
import { COLOURS, type AskedCards } from './look';

/** The cards of an episode as they are asked for. */
export interface ReadCards {
  readonly source: NumbersToPublish;
  readonly look: AskedCards;
  readonly files: readonly CardFile[];
  readonly places: CardPlaces;
}

/**
 * An episode's cards with the numbers of its lock: dishes and day, then saved swaps and the last correction. Null where
 * there is no such episode.
 */
export async function readCards(id: string, look: AskedCards): Promise<ReadCards | null> {
  const read = await readSource(id);
  if (!read) return null;
  const { source, changes } = read;
  const files = cardFiles([...cardsOf(source), ...(await changes())], filesLook(look));
  return { source, look, files, places: cardPlaces(files, source.file.episode) };
}

/**
 * One picture of an episode by its file's name, for which no other card is laid out, and swaps are worked out only where
 * it is none of a dish or the day. Null where there is no such episode, and with no file where it has no such card.
 */
export async function readCard(
  id: string,
  name: string,
  look: AskedCards,
): Promise<{ readonly file: CardFile | null } | null> {
  const read = await readSource(id);
  if (!read) return null;
  const first = cardsOf(read.source);
  const file =
    cardFileNamed(first, name, filesLook(look)) ??
    cardFileNamed([...first, ...(await read.changes())], name, filesLook(look));
  return { file };
}

const filesLook = ({ size, ground }: AskedCards) => ({ size, ground, colours: COLOURS });

interface ReadSource {
  readonly source: NumbersToPublish;
  /** The cards of saved swaps and of the last correction. */
  readonly changes: () => Promise<readonly Card[]>;
}

/** What cards are made of, before any is. */
async function readSource(id: string): Promise<ReadSource | null> {
  const file = await readEpisodeFile(id, new Date().toISOString(), { publish: true });
  if (!file) return null;
  const last = await readLastLock(id);
  const source = numbersToPublish(file, last?.snapshot ?? null);
  const changes = async () => {
    const [corrected] = await ownCorrections(id);
    return [
      ...cardsOfSwaps(swapTable(source.file, file.publish?.variants ?? []).rows, source.standing),
      ...(corrected ? cardsOfCorrection(corrected, source.standing) : []),
    ];
  };
  return { source, changes };
}

/** The lists of where each goes, by their files' names. */
export function placeLists(places: CardPlaces): ReadonlyMap<string, string> {
  const otio = placesOtio(places);
  return new Map([
    ['cards.vtt', placesVtt(places)],
    // Spreadsheets that would take the file for one in the system's own letters are told that it is UTF-8.
    ['cards.csv', `\uFEFF${placesCsv(places)}`],
    ...(otio === null ? [] : [['cards.otio', otio] as const]),
  ]);
}
