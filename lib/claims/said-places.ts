import type { TextContext } from '#lib/claims/statement';
import { dishesOf } from '#lib/episode/context';
import type { EditText, TextKind } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { announcements } from './places/announcements';
import { dishNames, type DishName } from './places/dish-names';
import { topicsOfLines } from './places/headings';
import {
  stretchesOf,
  UNKNOWN_TOPIC,
  type PlacedLine,
  type PlacedText,
  type Topic,
} from './places/placed-text';
import { joinSpoken, linesIn } from './places/spoken-text';
import { timeline, topicAt, type Span } from './places/timeline';

/** The order in which texts are told: what is said first, what is planned last. */
const ORDER: readonly PlacedText['said']['kind'][] = [
  'captions',
  'title',
  'thumbnail',
  'card',
  'description',
  'talkingPoint',
];

const FORMS: Readonly<Record<TextKind, TextContext['form']>> = {
  captions: 'captions',
  description: 'description',
  title: 'title',
  thumbnail: 'title',
  card: 'card',
};

/**
 * Every text of an episode in which something is said, written or shown, as one text each with its lines, and cut where
 * the dish changes. Which dish is in force where: by the segments' places in the cut, else the chapters that a
 * description lists, else the words that turn to a dish; in written texts by headings; else the one dish there is.
 * @example saidPlaces(file)[0].stretches // the intro, then “Barley skillet” from 0:45, …
 */
export function saidPlaces(file: EpisodeFile): PlacedText[] {
  const dishes = dishesOf(file.episode.segments);
  const names = dishNames(dishes);
  const spans = timeline(file, names);
  const texts = (file.edit?.texts ?? []).map((text) => placedText(text, names, spans));
  const all = [...texts, ...talkingPoints(file, names)];
  return ORDER.flatMap((kind) => all.filter(({ said }) => said.kind === kind));
}

function placedText(
  { id, kind, name, text }: EditText,
  names: readonly DishName[],
  spans: readonly Span[],
): PlacedText {
  const common = { said: { id, kind, name }, form: FORMS[kind] };
  if (kind === 'captions') {
    const joined = joinSpoken(text);
    return { ...common, ...joined, stretches: spokenStretches(joined, names, spans) };
  }
  const starts = linesIn(text);
  const lines = starts.map((start, index) => ({
    start,
    line: index + 1,
    startMs: null,
    endMs: null,
  }));
  const alone = onlyTopic(names);
  if (kind === 'title' || kind === 'thumbnail') {
    const topic: Topic = names.length > 1 ? { kind: 'day' } : alone;
    return {
      ...common,
      text,
      lines,
      remarks: [],
      stretches: stretchesOf(text.length, [{ at: 0, topic }]),
    };
  }
  const words = starts.map((start, index) => text.slice(start, starts[index + 1]));
  const topics = topicsOfLines(words, names, alone);
  const changes = topics.map((topic, index) => ({ at: starts[index] ?? 0, topic }));
  return { ...common, text, lines, remarks: [], stretches: stretchesOf(text.length, changes) };
}

/** Where nothing says which dish, it is the one there is. */
function onlyTopic(names: readonly DishName[]): Topic {
  const [only] = names;
  return names.length === 1 && only ? { kind: 'dish', segmentId: only.segmentId } : UNKNOWN_TOPIC;
}

interface Joined {
  readonly text: string;
  readonly lines: readonly PlacedLine[];
}

function spokenStretches(
  { text, lines }: Joined,
  names: readonly DishName[],
  spans: readonly Span[],
): PlacedText['stretches'] {
  const alone = onlyTopic(names);
  if (names.length < 2) return stretchesOf(text.length, [{ at: 0, topic: alone }]);
  const timed = spans.length > 0 && lines.some(({ startMs }) => startMs !== null);
  if (!timed) return stretchesOf(text.length, [{ at: 0, topic: alone }, ...turns(text, names)]);
  const changes = lines.map(({ start, startMs, endMs }, index) => {
    // A line that begins a little before its dish and goes on in it is of the dish.
    const middle = startMs === null ? null : (startMs + (endMs ?? startMs)) / 2;
    const topic = (middle === null ? null : topicAt(spans, middle)) ?? UNKNOWN_TOPIC;
    return { at: index === 0 ? 0 : start, topic };
  });
  return stretchesOf(text.length, atSentenceEnds(text, lines, changes));
}

function turns(text: string, names: readonly DishName[]) {
  return announcements(text, names).map(({ at, segmentId }) => ({
    at,
    topic: { kind: 'dish', segmentId } as const,
  }));
}

type Change = { readonly at: number; readonly topic: Topic };

/** A sentence that begins before the cut and ends soon after it, in the line that is cut, stays with what it began in. */
function atSentenceEnds(
  text: string,
  lines: readonly PlacedLine[],
  changes: readonly Change[],
): Change[] {
  return changes.map((change, index) => {
    const before = changes[index - 1];
    if (!before || before.topic === change.topic) return change;
    if (/[.!?…]["”’)]?\s*$/.test(text.slice(Math.max(0, change.at - 4), change.at))) return change;
    const end = lines[index + 1]?.start ?? text.length;
    const stop = /[.!?…]["”’)]?\s+/.exec(text.slice(change.at, end));
    return stop ? { ...change, at: change.at + stop.index + stop[0].length } : change;
  });
}

/** Sentences that are planned to be said, each of its segment’s dish. */
function talkingPoints(file: EpisodeFile, names: readonly DishName[]): PlacedText[] {
  return file.episode.segments.flatMap(({ id, title, recipe, talkingPoints: points }) =>
    points.map((point): PlacedText => {
      const topic: Topic = recipe === null ? onlyTopic(names) : { kind: 'dish', segmentId: id };
      return {
        said: { id: point.id, kind: 'talkingPoint', name: title },
        form: 'talkingPoint',
        text: point.text,
        lines: [{ start: 0, line: 1, startMs: null, endMs: null }],
        stretches: [{ start: 0, end: point.text.length, topic }],
        remarks: [],
      };
    }),
  );
}
