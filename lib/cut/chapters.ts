import type { Episode, Segment } from '#lib/episode/schema';
import { printRuntime } from '#lib/units/print';

export interface Chapter {
  readonly title: string;
  /** Whole seconds from the start of the cut. */
  readonly startS: number;
  /** Where it ends, if the cut says so: the next chapter's start, or the out-point of the last. */
  readonly endS?: number;
}

/** A rule of chapter lists that this episode breaks, in words that say how to mend it. */
export interface ChapterFault {
  readonly rule: 'noTimes' | 'firstAtZero' | 'atLeastThree' | 'ascending' | 'tenSeconds';
  readonly message: string;
}

export interface ChapterList {
  readonly chapters: readonly Chapter[];
  readonly faults: readonly ChapterFault[];
}

/** A segment as chapters need it; `chapter` false joins it with the one before. */
type ChapterPart = Pick<Segment, 'title' | 'inFrame' | 'outFrame'> &
  Partial<Pick<Segment, 'chapter'>>;

/** What chapters are made of. */
interface Chaptered {
  readonly segments: readonly ChapterPart[];
  readonly rate: Episode['rate'];
}

/** Shortest chapter in seconds and fewest chapters (common practice, no source). */
export const SHORTEST_S = 10;
const FEWEST = 3;

/**
 * The chapters of a cut from its segments' in-points, in whole seconds rounded down, and the rules of
 * description chapter lists that they break: first at 0:00, at least three, ascending, each at least 10 s
 * (common practice, no source). A joined segment adds its title to the chapter before: 'A, B'.
 * @example starts 0, 9 and 30 s break 'tenSeconds': the first chapter has 9 s
 */
export function chapterList(episode: Chaptered): ChapterList {
  const { num, den } = episode.rate;
  const second = (frame: number) => Math.floor((frame * den) / num);
  const chapters = chapterParts(episode.segments).map((parts) => {
    const out = parts.at(-1)?.outFrame ?? null;
    return {
      title: parts.map(({ title }) => title).join(', '),
      startS: second(parts[0]?.inFrame ?? 0),
      ...(out === null ? {} : { endS: second(out) }),
    };
  });
  return { chapters, faults: chapterFaults(chapters) };
}

/**
 * The segments that stand in the cut, those of one chapter together: one that is joined goes with the placed one
 * before it. The first begins a chapter in any case.
 * @example of A, B (joined) and C: [[A, B], [C]]
 */
export function chapterParts<T extends ChapterPart>(segments: readonly T[]): T[][] {
  const all: T[][] = [];
  for (const segment of segments.filter(({ inFrame }) => inFrame !== null)) {
    const before = all.at(-1);
    if (segment.chapter === false && before) before.push(segment);
    else all.push([segment]);
  }
  return all;
}

/** Where the cut ends by its segments, in whole seconds; null while the last of them has no end. */
export function cutEndS({ segments, rate }: Chaptered): number | null {
  const placed = segments.filter(({ inFrame }) => inFrame !== null);
  const last = placed.reduce<(typeof placed)[number] | null>(
    (latest, one) => ((one.inFrame ?? 0) >= (latest?.inFrame ?? 0) ? one : latest),
    null,
  );
  return last?.outFrame == null ? null : Math.floor((last.outFrame * rate.den) / rate.num);
}

/** The broken rules of a list of chapters, each named once per place. */
export function chapterFaults(chapters: readonly Chapter[]): ChapterFault[] {
  if (chapters.length === 0) {
    return [
      {
        rule: 'noTimes',
        message: 'no segment has a time in the cut yet, so there are no chapters',
      },
    ];
  }
  const faults: ChapterFault[] = [];
  const [first] = chapters;
  if (first && first.startS !== 0) {
    faults.push({
      rule: 'firstAtZero',
      message: `the first chapter must start at 0:00; "${first.title}" starts at ${printRuntime(first.startS)}`,
    });
  }
  if (chapters.length < FEWEST) {
    faults.push({
      rule: 'atLeastThree',
      message: `a chapter list needs at least ${FEWEST}; this has ${chapters.length}`,
    });
  }
  for (const [index, chapter] of chapters.entries()) {
    const next = chapters[index + 1];
    if (!next) {
      const lasts = (chapter.endS ?? Infinity) - chapter.startS;
      if (lasts < SHORTEST_S) {
        const message = `"${chapter.title}" lasts ${lasts} s to the end; a chapter needs ${SHORTEST_S} s`;
        faults.push({ rule: 'tenSeconds', message });
      }
      continue;
    }
    const lasts = next.startS - chapter.startS;
    if (lasts <= 0) {
      faults.push({
        rule: 'ascending',
        message: `"${next.title}" at ${printRuntime(next.startS)} does not come after "${chapter.title}" at ${printRuntime(chapter.startS)}`,
      });
    } else if (lasts < SHORTEST_S) {
      faults.push({
        rule: 'tenSeconds',
        message: `"${chapter.title}" lasts ${lasts} s; a chapter needs ${SHORTEST_S} s, so start the next at ${printRuntime(chapter.startS + SHORTEST_S)} or later`,
      });
    }
  }
  return faults;
}

/** One line per chapter, time first: `1:05 Barley skillet`. */
export function chapterLines(chapters: readonly Chapter[]): string[] {
  return chapters.map((chapter) => `${printRuntime(chapter.startS)} ${chapter.title}`);
}
