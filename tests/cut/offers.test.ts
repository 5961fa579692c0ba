import { describe, expect, it } from 'vitest';
import { captionOffers } from '#lib/cut/caption-offers';
import type { CutPoints } from '#lib/cut/cut-points';
import { differenceWords, lengthWords } from '#lib/cut/length-words';
import { listOffers } from '#lib/cut/list-offers';
import { plannedRuntime } from '#lib/cut/planned-runtime';
import { frameRate } from '#lib/cut/timecode';

const at25 = frameRate('25');
const points: CutPoints[] = [
  { id: 'a', title: 'Barley skillet', inFrame: 50, outFrame: 100 },
  { id: 'b', title: 'Skyr pots', inFrame: null, outFrame: null },
  { id: 'c', title: 'Walnut brittle', inFrame: null, outFrame: null },
];
const line = (startMs: number, text: string, at: number) => ({
  startMs,
  endMs: startMs + 900,
  text,
  line: at,
});

describe('what captions offer', () => {
  it('is a frame, the lines that are said there, and the words as somebody said them', () => {
    const lines = [
      line(1000, 'Barley goes into the skillet', 3),
      line(9000, 'Then the Skyr, in pots', 6),
    ];
    const { offers, missing } = captionOffers(
      points,
      points.map(({ id, title }) => ({ id, title, points: [] })),
      lines,
      at25,
    );
    expect(offers).toMatchObject([
      { id: 'a', inFrame: 25, nowFrame: 50, words: ['barley', 'skillet'], line: 3 },
      {
        id: 'b',
        inFrame: 225,
        nowFrame: null,
        words: ['skyr', 'pots'],
        said: ['Then the Skyr, in pots'],
      },
    ]);
    expect(missing).toEqual(['Walnut brittle']);
  });
});

describe('what an edit list offers', () => {
  const edl = [
    'TITLE: HARBOR DAY',
    '001 AX V C 00:00:00:00 00:00:04:00 01:00:00:00 01:00:04:00',
    '* FROM CLIP NAME: barley skillet wide',
    '002 B041 V C 00:00:00:00 00:00:02:00 01:00:04:00 01:00:06:00',
    '003 AX V C 00:00:00:00 00:00:02:00 01:00:06:00 nonsense',
  ].join('\n');
  const otio = JSON.stringify({
    OTIO_SCHEMA: 'Timeline.1',
    name: 'Harbor day',
    tracks: {
      OTIO_SCHEMA: 'Stack.1',
      children: [
        {
          OTIO_SCHEMA: 'Track.1',
          kind: 'Video',
          children: [
            'nothing',
            ...Array.from({ length: 100 }, () => ({
              OTIO_SCHEMA: 'Clip.1',
              name: 'skyr pots',
              source_range: {
                start_time: { value: 0, rate: 24 },
                duration: { value: 1, rate: 24 },
              },
            })),
          ],
        },
      ],
    },
  });

  it('is told apart by how it begins, with what was skipped by its place', () => {
    const read = listOffers(points, edl, at25);
    if (!read.ok) throw new Error('the list cannot be read');
    const { format, title, offers, missing, remarks } = read.value;
    expect([format, title]).toEqual(['edl', 'HARBOR DAY']);
    expect(offers).toEqual([
      {
        id: 'a',
        title: 'Barley skillet',
        inFrame: 0,
        outFrame: 100,
        clips: ['barley skillet wide'],
      },
    ]);
    expect(missing).toEqual(['Skyr pots', 'Walnut brittle']);
    expect(remarks.map(({ at, code, skipped }) => [at, code, skipped])).toEqual([
      [4, 'reel', true],
      [5, 'timecode', true],
    ]);
  });

  it('loses no frame to rounding: a hundred frames at 24 are 104.17 at 25', () => {
    const read = listOffers(points, otio, at25);
    if (!read.ok) throw new Error('the timeline cannot be read');
    expect(read.value.offers).toMatchObject([{ id: 'b', inFrame: 0, outFrame: 104 }]);
    expect(read.value.remarks.map(({ code }) => code)).toEqual(['event', 'rate']);
  });

  it('counts drop frame where semicolons say so: an hour is 107,892 frames (SMPTE ST 12-1)', () => {
    const text = '001 skyr-pots V C 00:00:00;00 01:00:00;00 00:00:00;00 01:00:00;00';
    const read = listOffers(points, text, frameRate('29.97'));
    expect(read.ok && read.value.offers).toMatchObject([{ outFrame: 107_892 }]);
  });

  it.each(['', '  \n', 'hello', '{"a"', '[]'])('“%s” is refused in words', (text) => {
    const read = listOffers(points, text, at25);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems[0]?.message).not.toBe('');
  });
});

describe('planned against cut', () => {
  const bare = { shots: [], points: [], plannedS: 0, inFrame: null, outFrame: null };

  it('is unknown where nothing is planned or nothing is cut, and is no zero in a sum', () => {
    const { segments, plannedS, cutS, differenceS } = plannedRuntime(
      [
        { ...bare, id: 'a', title: 'A', inFrame: 0, outFrame: 250 },
        { ...bare, id: 'b', title: 'B', plannedS: 30 },
        { ...bare, id: 'c', title: 'C', plannedS: 30, inFrame: 250, outFrame: 1250 },
      ],
      { num: 25, den: 1 },
    );
    expect(segments.map((row) => [row.plannedS, row.cutS, row.differenceS])).toEqual([
      [null, 10, null],
      [30, null, null],
      [30, 40, 10],
    ]);
    expect([plannedS, cutS, differenceS]).toEqual([60, 50, 10]);
  });

  it.each([
    [null, '–', '–'],
    [0.4, '0:00', 'as planned'],
    [12.4, '0:12', '12 s more'],
    [-65, null, '1:05 less'],
  ])('%s s reads %s, as a difference %s', (seconds, length, difference) => {
    if (length !== null) expect(lengthWords(seconds)).toBe(length);
    expect(differenceWords(seconds)).toBe(difference);
  });
});
