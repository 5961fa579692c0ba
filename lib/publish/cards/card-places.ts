import type { Segment } from '#lib/episode/schema';
import { episodeRate, printTimecode, type FrameRate } from '#lib/cut/timecode';
import type { CardFile } from '#lib/publish/cards/card-files';

/** Where a picture goes in the cut; frames are whole, `outFrame` is the first after it. */
export interface CardPlace {
  readonly file: CardFile;
  readonly span: { readonly inFrame: number; readonly outFrame: number } | null;
  /** Why it has no place yet; null where it has one. */
  readonly why: string | null;
}

/** The places of all pictures that belong in the cut, with the frames they are counted in. */
export interface CardPlaces {
  readonly title: string;
  /** Null where timecode is written at no such rate: then nothing has a place. */
  readonly rate: FrameRate | null;
  readonly places: readonly CardPlace[];
}

/** How long a card stands where nobody said (common practice, no source). */
export const CARD_SECONDS = 5;

/** Of the cut, what places come from. */
export interface CutOfCards {
  readonly title: string;
  readonly rate: { readonly num: number; readonly den: number };
  readonly dropFrame: boolean;
  readonly segments: readonly Pick<Segment, 'id' | 'kind' | 'title' | 'inFrame' | 'outFrame'>[];
}

/**
 * Where each picture goes: numbers and ingredients of a dish from its in-point on, one after the other for five seconds
 * each and not beyond its out-point; the day over the talk behind the last dish; a correction from the frame at which
 * its number was said. A step's frame nobody knows.
 */
export function cardPlaces(files: readonly CardFile[], cut: CutOfCards): CardPlaces {
  const rate = episodeRate(cut);
  const inCut = files.filter(({ card }) => card.kind !== 'thumbnail');
  if (!rate) {
    const why = 'the cut has a rate at which no timecode is written';
    const places = inCut.map((file) => ({ file, span: null, why }));
    return { title: cut.title, rate, places };
  }
  const length = Math.round((CARD_SECONDS * rate.num) / rate.den);
  const taken = new Map<string, number>();
  const places = inCut.map((file): CardPlace => {
    const found = beginOf(file, cut);
    if (typeof found === 'string') return { file, span: null, why: found };
    const inFrame = Math.max(found.from, taken.get(found.key) ?? 0);
    const outFrame = Math.min(inFrame + length, found.to ?? Infinity);
    if (outFrame <= inFrame) {
      return { file, span: null, why: `${found.called} is over before it` };
    }
    taken.set(found.key, outFrame);
    return { file, span: { inFrame, outFrame }, why: null };
  });
  return { title: cut.title, rate, places };
}

interface Begin {
  /** What stands there already is counted by this: a segment's id, or the picture's own name. */
  readonly key: string;
  readonly called: string;
  readonly from: number;
  readonly to: number | null;
}

function beginOf({ card, name }: CardFile, { segments }: CutOfCards): Begin | string {
  if (card.atFrame !== null)
    return { key: `picture ${name}`, called: name, from: card.atFrame, to: null };
  switch (card.kind) {
    case 'dish':
    case 'ingredients': {
      const segment = segments.find(({ id }) => id === card.segmentId);
      return segment ? within(segment) : 'its dish is not in the running order';
    }
    case 'day': {
      const last = segments.findLastIndex(({ kind }) => kind === 'recipe');
      const talk = segments.slice(last + 1).find(({ kind }) => kind === 'talk');
      return talk ? within(talk) : 'no talk stands behind the last dish';
    }
    case 'step':
      return 'nobody has said at which frame the step is seen';
    case 'swap':
    case 'correction':
      return 'nobody has said at which frame its number is heard';
    case 'thumbnail':
      return 'it stands for the video and is not in it';
  }
}

function within({ id, title, inFrame, outFrame }: CutOfCards['segments'][number]): Begin | string {
  return inFrame === null
    ? `${title} has no in-point yet`
    : { key: `segment ${id}`, called: title, from: inFrame, to: outFrame };
}

/** A place in timecode, in and out. */
export function placeWords(
  { span }: Pick<CardPlace, 'span'>,
  rate: FrameRate | null,
): { readonly from: string; readonly to: string } | null {
  if (!span || !rate) return null;
  return { from: printTimecode(span.inFrame, rate), to: printTimecode(span.outFrame, rate) };
}
