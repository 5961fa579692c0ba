import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import webVtt from 'webvtt-parser';
import { readOtio } from '#lib/cut/read-otio';
import { frameRate, type FrameRateId } from '#lib/cut/timecode';
import { cardFiles } from '#lib/publish/cards/card-files';
import { cardPlaces, type CutOfCards } from '#lib/publish/cards/card-places';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { correctionCard } from '#lib/publish/cards/change-cards';
import { placesCsv } from '#lib/publish/cards/places-csv';
import { placesOtio } from '#lib/publish/cards/places-otio';
import { placesVtt } from '#lib/publish/cards/places-vtt';
import { numbersToPublish } from '#lib/publish/from-lock';
import { COLOURS, demo } from './support';

const FILE = demo();
const SAID = { title: 'Barley skillet --> one', before: '704', after: '725', unit: 'kcal' };
const FILES = cardFiles(
  [
    ...cardsOf(numbersToPublish(FILE, null)),
    correctionCard({ ...SAID, atFrame: 1150 }, 'draft'),
    correctionCard(SAID, 'draft'),
  ],
  { size: '1920x1080', ground: 'plate', colours: COLOURS },
);
const placed = (more: Partial<CutOfCards> = {}) => cardPlaces(FILES, { ...FILE.episode, ...more });
const spans = (of: ReturnType<typeof placed>) => of.places.filter(({ span }) => span !== null);

describe('names of files', () => {
  test('are in running order, no two alike, with their size', () => {
    const names = FILES.map(({ name }) => name);
    expect(names[0]).toBe('01-barley-skillet-macros-1920x1080');
    expect(new Set(names).size).toBe(names.length);
    expect([...names].sort()).toEqual(names);
    for (const { name, card } of FILES) {
      expect(name).toMatch(card.kind === 'thumbnail' ? /-1280x720$/ : /-1920x1080$/);
      expect(name).toMatch(/^[a-z0-9-]+$/);
    }
  });
});

describe('where cards go', () => {
  test('numbers stand at the in-point for five seconds, ingredients follow, a correction where it was said', () => {
    const of = placed();
    const first = FILE.episode.segments.find(({ kind }) => kind === 'recipe');
    expect(of.places[0]?.span).toEqual({
      inFrame: first?.inFrame,
      outFrame: (first?.inFrame ?? 0) + 125,
    });
    expect(of.places[1]?.span?.inFrame).toBe(of.places[0]?.span?.outFrame);
    expect(of.places.at(-2)?.span).toEqual({ inFrame: 1150, outFrame: 1275 });
    expect(of.places.at(-1)?.why).toContain('nobody has said at which frame');
    expect(of.places.some(({ file }) => file.card.kind === 'thumbnail')).toBe(false);
  });

  test('none goes beyond its segment, what has no in-point has no place yet', () => {
    const short = FILE.episode.segments.map((segment) =>
      segment.kind === 'recipe' && segment.inFrame !== null
        ? { ...segment, outFrame: segment.inFrame + 50 }
        : segment,
    );
    const of = placed({ segments: short });
    expect(of.places[0]?.span).toMatchObject({ outFrame: 1125 + 50 });
    expect(of.places[1]).toMatchObject({ span: null, why: 'Barley skillet is over before it' });
    const without = FILE.episode.segments.map((segment) => ({ ...segment, inFrame: null }));
    const none = placed({ segments: without });
    expect(none.places[0]).toMatchObject({ span: null, why: 'Barley skillet has no in-point yet' });
    expect(placesCsv(none)).toContain('no place yet: Barley skillet has no in-point yet');
  });
});

test('two dishes of one title each have their own time', () => {
  const [talk, first, second, ...rest] = FILE.episode.segments;
  if (!talk || !first || !second) throw new Error('the demo has two dishes');
  const at = { outFrame: null, title: 'Soup' };
  const segments = [
    talk,
    { ...second, ...at, inFrame: 2000 },
    { ...first, ...at, inFrame: 1950 },
    ...rest,
  ];
  const of = placed({ segments });
  const beginOf = (segmentId: string, kind: string) =>
    of.places.find(({ file: { card } }) => card.segmentId === segmentId && card.kind === kind)?.span
      ?.inFrame;
  expect([beginOf(first.id, 'dish'), beginOf(second.id, 'dish')]).toEqual([1950, 2000]);
  expect([beginOf(first.id, 'ingredients'), beginOf(second.id, 'ingredients')]).toEqual([
    2075, 2125,
  ]);
});

const RATES: readonly FrameRateId[] = ['23.976', '25', '29.97df', '59.94', '60'];
const cutAt = (id: FrameRateId) => {
  const { num, den, drop } = frameRate(id);
  return { rate: { num, den }, dropFrame: drop > 0 };
};

describe('the lists', () => {
  test.each(RATES)('WebVTT at %s is read by the W3C’s parser, to the frame', (id) => {
    const of = placed(cutAt(id));
    const { cues } = new webVtt.WebVTTParser().parse(placesVtt(of), 'metadata');
    expect(cues).toHaveLength(spans(of).length);
    const { num, den } = frameRate(id);
    let before = 0;
    for (const { startTime, endTime, text } of cues) {
      const data = JSON.parse(text) as Record<string, unknown>;
      expect(Math.round((startTime * num) / den)).toBe(data.inFrame);
      expect(Math.round((endTime * num) / den)).toBe(data.outFrame);
      expect(startTime).toBeGreaterThanOrEqual(before);
      before = startTime;
    }
    const titles = cues.map(({ text }) => (JSON.parse(text) as { readonly title: string }).title);
    expect(titles).toContain(SAID.title);
  });

  test('the table is RFC 4180 and says drop frame by its semicolon', () => {
    // SMPTE ST 12-1: the 1,800th frame of 29.97 drop frame is numbered 00:01:00;02.
    const segments = FILE.episode.segments.map((segment) => ({
      ...segment,
      inFrame: segment.inFrame === 1125 ? 1800 : segment.inFrame,
    }));
    const text = placesCsv(placed({ ...cutAt('29.97df'), segments }));
    expect(text).toMatch(/\r\n$/);
    const rows: string[][] = parse(text);
    expect(rows[0]?.[3]).toBe('in (timecode)');
    expect(rows[1]?.[3]).toBe('00:01:00;02');
    expect(rows[1]?.[5]).toBe('1800');
    for (const row of rows) expect(row).toHaveLength(9);
  });

  test('the timeline has each still at its frames, on a second track where two overlap', () => {
    const of = placed();
    const text = placesOtio(of) ?? '';
    const read = readOtio(text, frameRate('25'));
    if (!read.ok) throw new Error('it must be readable');
    interface Node {
      readonly OTIO_SCHEMA: string;
      readonly source_range: { readonly duration: { readonly value: number } };
      readonly media_references?: { readonly DEFAULT_MEDIA: { readonly target_url: string } };
    }
    const { tracks } = JSON.parse(text) as {
      readonly tracks: { readonly children: readonly { readonly children: readonly Node[] }[] };
    };
    expect(tracks.children).toHaveLength(2);
    const stills = tracks.children.flatMap(({ children }) => {
      let at = 0;
      return children.flatMap((node) => {
        const from = at;
        at += node.source_range.duration.value;
        return node.OTIO_SCHEMA === 'Gap.1'
          ? []
          : [{ url: node.media_references?.DEFAULT_MEDIA.target_url, from, to: at }];
      });
    });
    const wanted = spans(of).map(({ file, span }) => ({
      url: `${file.name}.png`,
      from: span?.inFrame,
      to: span?.outFrame,
    }));
    const byUrl = (a: { url?: string | undefined }, b: { url?: string | undefined }) =>
      (a.url ?? '') < (b.url ?? '') ? -1 : 1;
    expect([...stills].sort(byUrl)).toEqual([...wanted].sort(byUrl));
  });

  test('at a rate without timecode nothing has a place, and the lists say so', () => {
    const of = placed({ rate: { num: 17, den: 1 } });
    expect(of.rate).toBeNull();
    expect(placesOtio(of)).toBeNull();
    expect(placesVtt(of)).toContain('NOTE No place yet');
    expect(placesCsv(of)).toContain('at which no timecode is written');
  });
});
