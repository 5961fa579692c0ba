import type { CutPoints } from '#lib/cut/cut-points';
import { findSegments, OPENING_MS, type SoughtSegment } from '#lib/cut/find-segments';
import { plainWords } from '#lib/cut/plain-words';
import type { SpokenLine } from '#lib/cut/spoken';
import { framesIn, type FrameRate } from '#lib/cut/timecode';

/** Where captions let a segment begin, with what is said there, so that the person can see whether it is right. */
export interface CaptionOffer {
  readonly id: string;
  readonly title: string;
  readonly inFrame: number;
  /** Where it begins now; null while it is in no cut. */
  readonly nowFrame: number | null;
  /** The words of its title and talking points that are said there. */
  readonly words: readonly string[];
  /** What is said from there on, a few lines. */
  readonly said: readonly string[];
  /** Where that stands in the captions, counted from 1. */
  readonly line: number;
}

export interface CaptionOffers {
  readonly offers: readonly CaptionOffer[];
  /** Segments of which no word was found, by title. */
  readonly missing: readonly string[];
}

/** Words are found without their endings; these are the same as somebody said them, each once. */
function asSaid(words: readonly string[], lines: readonly SpokenLine[]): string[] {
  const said = lines.flatMap(({ text }) => text.match(/[\p{L}\p{N}]+/gu) ?? []);
  const own = said.filter((word) => plainWords(word).some((plain) => words.includes(plain)));
  return [...new Set(own.map((word) => word.toLowerCase()))];
}

/** Lines that are shown of each place. */
const LINES_SHOWN = 3;
/** Lines that may be said in the opening of a segment at most. */
const MOST_OPENING = 60;

/**
 * Offers of in-points by what captions say, in running order; nothing is taken by itself.
 * @example captionOffers(points, sought, lines, frameRate('25')).offers[0]?.said // ['First the barley skillet. …']
 */
export function captionOffers(
  points: readonly CutPoints[],
  sought: readonly SoughtSegment[],
  lines: readonly SpokenLine[],
  rate: FrameRate,
): CaptionOffers {
  const found = findSegments(sought, lines);
  const offers = found.flatMap(({ id, startMs, line, words }): CaptionOffer[] => {
    const own = points.find((one) => one.id === id);
    if (!own) return [];
    const from = lines.findIndex((each) => each.line === line);
    const said = lines.slice(from, from + LINES_SHOWN).map(({ text }) => text);
    const opening = lines
      .slice(from, from + MOST_OPENING)
      .filter((each) => (each.startMs ?? Infinity) - startMs <= OPENING_MS);
    const inFrame = framesIn(startMs, rate);
    return [
      {
        id,
        title: own.title,
        inFrame,
        nowFrame: own.inFrame,
        words: asSaid(words, opening),
        said,
        line,
      },
    ];
  });
  const missing = points.filter(({ id }) => !offers.some((offer) => offer.id === id));
  return { offers, missing: missing.map(({ title }) => title) };
}
