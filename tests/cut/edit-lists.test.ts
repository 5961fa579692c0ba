import { describe, expect, it } from 'vitest';
import type { EditList } from '#lib/cut/edit-list';
import { readEdl } from '#lib/cut/read-edl';
import { readOtio } from '#lib/cut/read-otio';
import { frameRate } from '#lib/cut/timecode';
import type { Result } from '#lib/result';

const at25 = frameRate('25');

function listOf(read: Result<EditList>): EditList {
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value;
}

const edl = (...events: string[]) =>
  ['TITLE: HARBOR DAY', 'FCM: NON-DROP FRAME', ...events].join('\n');

describe('an edit decision list', () => {
  // The form CMX 3600, from memory: five seconds, the next one's record in is this one's out.
  it('has its cut points from the first record in-point, and clip names', () => {
    const list = listOf(
      readEdl(
        edl(
          '001  AX       V     C        00:00:10:00 00:00:15:00 01:00:00:00 01:00:05:00',
          '* FROM CLIP NAME: barley toast, take 3',
          '002  B002     V     D    012 00:01:00:00 00:01:04:00 01:00:05:00 01:00:09:00',
          '003  AX       A     C        00:00:10:00 00:00:15:00 01:00:00:00 01:00:05:00',
        ),
        at25,
      ),
    );
    expect(list.title).toBe('HARBOR DAY');
    expect(list.pieces).toMatchObject([
      {
        name: 'barley toast, take 3',
        fromFrame: 0,
        toFrame: 125,
        sourceFrom: 250,
        transition: 'cut',
      },
      { name: 'B002', fromFrame: 125, toFrame: 225, transition: 'dissolve' },
    ]);
    expect(list.remarks).toEqual([]);
  });

  it('counts drop frame where it says so: an hour is 107,892 frames (SMPTE ST 12-1)', () => {
    const text = 'FCM: DROP FRAME\n001 AX V C 00:00:00;00 01:00:00;00 00:00:00;00 01:00:00;00';
    expect(listOf(readEdl(text, frameRate('29.97'))).pieces).toMatchObject([{ toFrame: 107_892 }]);
    const non = text.replace('DROP', 'NON-DROP').replaceAll(';', ':');
    expect(listOf(readEdl(non, frameRate('29.97df'))).pieces).toMatchObject([{ toFrame: 108_000 }]);
  });

  it('says what is odd and what was left out, by line', () => {
    const { pieces, remarks } = listOf(
      readEdl(
        edl(
          '001 AX V C 00:00:10:00 00:00:20:00 01:00:00:00 01:00:05:00',
          'M2  AX  050.0  00:00:10:00',
          '002 AX V C 00:00:10:00 00:00:11:00 01:00:06:00 01:00:08:00',
          '003 AX V C 00:00:10:00 00:00:61:00 01:00:06:00 01:00:08:00',
          '004 hello',
          'M2  ZZ  025.0  00:00:10:00',
        ),
        at25,
      ),
    );
    expect(pieces).toMatchObject([{ speed: 2 }, { speed: 1 }]);
    expect(remarks.map(({ at, code, skipped }) => [at, code, skipped])).toEqual([
      [3, 'speed', false],
      [5, 'length', false],
      [5, 'gap', false],
      [6, 'timecode', true],
      [7, 'event', true],
      [8, 'reel', true],
    ]);
  });

  it('without an event is refused in words', () => {
    expect(readEdl('hello', at25)).toMatchObject({ ok: false, problems: [{ code: 'empty' }] });
  });
});

// Objects as OpenTimelineIO's own files have them (Academy Software Foundation; from memory).
const time = (value: number, rate = 24) => ({ OTIO_SCHEMA: 'RationalTime.1', value, rate });
const range = (start: number, duration: number, rate = 24) => ({
  OTIO_SCHEMA: 'TimeRange.1',
  start_time: time(start, rate),
  duration: time(duration, rate),
});
const timeline = (...children: unknown[]) =>
  JSON.stringify({
    OTIO_SCHEMA: 'Timeline.1',
    name: 'Harbor day',
    tracks: {
      OTIO_SCHEMA: 'Stack.1',
      children: [
        { OTIO_SCHEMA: 'Track.1', kind: 'Audio', children: [] },
        { OTIO_SCHEMA: 'Track.1', kind: 'Video', children },
      ],
    },
  });

describe('an OpenTimelineIO timeline', () => {
  it('has clips one after another: 24@24 and 48@24 end at 72@24, 3 s', () => {
    const list = listOf(
      readOtio(
        timeline(
          { OTIO_SCHEMA: 'Clip.1', name: 'a', source_range: range(0, 24) },
          { OTIO_SCHEMA: 'Transition.1', transition_type: 'SMPTE_Dissolve' },
          { OTIO_SCHEMA: 'Clip.2', name: 'b', source_range: range(24, 48) },
        ),
        at25,
      ),
    );
    expect(list.pieces).toMatchObject([
      { name: 'a', fromFrame: 0, toFrame: 25 },
      { name: 'b', fromFrame: 25, toFrame: 75, sourceFrom: 25 },
    ]);
  });

  it('knows gaps, groups, media without a range of their own, and changed speeds', () => {
    const { pieces, remarks } = listOf(
      readOtio(
        timeline(
          { OTIO_SCHEMA: 'Gap.1', source_range: range(0, 25, 25) },
          {
            OTIO_SCHEMA: 'Clip.2',
            name: 'whole',
            media_references: { DEFAULT_MEDIA: { available_range: range(0, 50, 25) } },
            effects: [{ OTIO_SCHEMA: 'LinearTimeWarp.1', time_scalar: 2 }],
          },
          {
            OTIO_SCHEMA: 'Stack.1',
            name: 'group',
            children: [{ OTIO_SCHEMA: 'Clip.1', name: 'c', source_range: range(0, 75, 25) }],
          },
          { OTIO_SCHEMA: 'Clip.1', name: 'no length' },
        ),
        at25,
      ),
    );
    expect(pieces).toMatchObject([
      { name: 'whole', fromFrame: 25, toFrame: 75, speed: 2 },
      { name: 'group', fromFrame: 75, toFrame: 150 },
    ]);
    expect(remarks.map(({ code }) => code)).toEqual(['gap', 'speed', 'length']);
  });

  it.each([
    ['{"OTIO_SCHEMA": "Timeline.1", "tracks"', 'json'],
    ['{"OTIO_SCHEMA": "Clip.1"}', 'form'],
    [timeline(), 'empty'],
  ])('%s is refused in words', (text, code) => {
    expect(readOtio(text, at25)).toMatchObject({ ok: false, problems: [{ code }] });
  });
});
