import type { EpisodeFile } from '#lib/episode/schema';
import { chaptersIn } from '#lib/cut/read-chapters';
import { linesOf } from '#lib/cut/text-lines';
import { dishNamed, type DishName } from './dish-names';
import { UNKNOWN_TOPIC, type Topic } from './placed-text';

/** A part of the cut and what it is about. */
export interface Span {
  readonly fromMs: number;
  /** Null: until the next, or the end. */
  readonly toMs: number | null;
  readonly topic: Topic;
}

/**
 * What the cut is about from when to when, by the segments' places in it at the episode's rate; where none has one, by
 * the marks of chapters that the descriptions have. Empty where nothing says it.
 * @example a skillet from frame 1125 at 25 a second: [{ fromMs: 45_000, topic: { kind: 'dish', … } }]
 */
export function timeline(file: EpisodeFile, names: readonly DishName[]): Span[] {
  const { segments, rate } = file.episode;
  const ms = (frame: number) => (frame * 1000 * rate.den) / rate.num;
  const spans = segments.flatMap(({ id, recipe, inFrame, outFrame }): Span[] => {
    if (inFrame === null) return [];
    const topic: Topic = recipe === null ? UNKNOWN_TOPIC : { kind: 'dish', segmentId: id };
    return [{ fromMs: ms(inFrame), toMs: outFrame === null ? null : ms(outFrame), topic }];
  });
  const all = spans.length > 0 ? spans : chapterSpans(file, names);
  return [...all].sort((a, b) => a.fromMs - b.fromMs);
}

/** What is talked about at an instant; null where the timeline does not say. */
export function topicAt(spans: readonly Span[], atMs: number): Topic | null {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((spans[middle]?.fromMs ?? 0) <= atMs) low = middle + 1;
    else high = middle;
  }
  const span = spans[low - 1];
  if (!span || (span.toMs !== null && atMs >= span.toMs)) return null;
  return span.topic;
}

function chapterSpans(file: EpisodeFile, names: readonly DishName[]): Span[] {
  const texts = (file.edit?.texts ?? []).filter(({ kind }) => kind === 'description');
  const chapters = texts.map(({ text }) =>
    chaptersIn(linesOf(text)).filter((chapter) => chapter !== null),
  );
  // Two descriptions may be two drafts of one: the first that has chapters counts. What rises and does not begin at
  // 0:00 may as well be meals at their times of day.
  const list = chapters.find(([first]) => first?.startMs === 0) ?? [];
  return list.map(({ startMs, title }) => {
    const dish = dishNamed(title, names);
    const topic: Topic = dish ? { kind: 'dish', segmentId: dish.segmentId } : UNKNOWN_TOPIC;
    return { fromMs: startMs, toMs: null, topic };
  });
}
