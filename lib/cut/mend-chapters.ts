import { chapterFaults, SHORTEST_S, type Chapter } from '#lib/cut/chapters';
import { printRuntime } from '#lib/units/print';

/** One way to make a list of chapters keep a rule that it breaks; the person takes it or not. */
export interface ChapterMend {
  /** Times change, the order does, or two chapters become one. */
  readonly kind: 'move' | 'order' | 'join';
  readonly words: string;
  readonly chapters: readonly Chapter[];
}

/**
 * Ways to mend the first broken rule of a list: begin at 0:00, put in order, join a short chapter with the one before
 * or after, or begin the next one later. Only ways after which fewer rules are broken are offered.
 * @example chapters at 0, 9 and 30 s: join the first two, or begin the second 1 s later
 */
export function chapterMends(chapters: readonly Chapter[]): ChapterMend[] {
  const faults = chapterFaults(chapters);
  if (faults.length === 0) return [];
  const mends = [...fromZero(chapters), ...ordered(chapters), ...longer(chapters)];
  const broken = (list: readonly Chapter[]) => chapterFaults(list).length;
  return mends.filter((mend) => mend.chapters.length > 0 && broken(mend.chapters) < faults.length);
}

function fromZero(chapters: readonly Chapter[]): ChapterMend[] {
  const [first, ...rest] = chapters;
  if (first === undefined || first.startS === 0) return [];
  const words = `let “${first.title}” begin at 0:00`;
  return [{ kind: 'move', words, chapters: [{ ...first, startS: 0 }, ...rest] }];
}

function ordered(chapters: readonly Chapter[]): ChapterMend[] {
  const sorted = [...chapters].sort((a, b) => a.startS - b.startS);
  if (sorted.every((chapter, index) => chapter === chapters[index])) return [];
  return [{ kind: 'order', words: 'put them in the order of their times', chapters: sorted }];
}

function longer(chapters: readonly Chapter[]): ChapterMend[] {
  const at = chapters.findIndex((_, index) => lengthOf(chapters, index) < SHORTEST_S);
  const short = chapters[at];
  if (short === undefined) return [];
  const next = chapters[at + 1];
  const before = chapters[at - 1];
  const mends: ChapterMend[] = [];
  if (next) {
    const startS = short.startS + SHORTEST_S;
    const by = startS - next.startS;
    mends.push({
      kind: 'move',
      words: `begin “${next.title}” ${by} s later, at ${printRuntime(startS)}`,
      chapters: chapters.with(at + 1, { ...next, startS }),
    });
    const joined = { ...next, startS: short.startS, title: `${short.title}, ${next.title}` };
    mends.push({
      kind: 'join',
      words: `join “${short.title}” with “${next.title}”`,
      chapters: [...chapters.slice(0, at), joined, ...chapters.slice(at + 2)],
    });
  }
  if (before) {
    const joined = { title: `${before.title}, ${short.title}`, startS: before.startS };
    const ended = short.endS === undefined ? joined : { ...joined, endS: short.endS };
    mends.push({
      kind: 'join',
      words: `join “${short.title}” with “${before.title}”`,
      chapters: [...chapters.slice(0, at - 1), ended, ...chapters.slice(at + 1)],
    });
  }
  return mends;
}

function lengthOf(chapters: readonly Chapter[], index: number): number {
  const own = chapters[index];
  const end = chapters[index + 1]?.startS ?? own?.endS ?? Infinity;
  return end - (own?.startS ?? 0);
}
