import { markName, type TakeMark } from '#lib/cut/take-marks';
import type { FrameRate } from '#lib/cut/timecode';

/**
 * Takes as markers of an OpenTimelineIO timeline, JSON (Academy Software Foundation; objects `Timeline.1`, `Stack.1`,
 * `Track.1`, `Gap.1`, `Marker.2`, `TimeRange.1`, `RationalTime.1` as its own files have them). The timeline begins at the
 * first take's timecode and is empty; each take is a marker of one frame at its end, named by its slate, with the rest
 * in its comment and in metadata.
 */
export function takesOtio(title: string, marks: readonly TakeMark[], rate: FrameRate): string {
  const first = marks.reduce((least, { frame }) => Math.min(least, frame), Infinity);
  const last = marks.reduce((most, { frame }) => Math.max(most, frame), -Infinity);
  const from = marks.length === 0 ? 0 : first;
  const time = (value: number) => ({
    OTIO_SCHEMA: 'RationalTime.1',
    rate: rate.num / rate.den,
    value,
  });
  const range = (start: number, duration: number) => ({
    OTIO_SCHEMA: 'TimeRange.1',
    start_time: time(start),
    duration: time(duration),
  });
  const item = { metadata: {}, source_range: null, effects: [], markers: [], enabled: true };
  const length = marks.length === 0 ? 0 : last - from + 1;
  const timeline = {
    OTIO_SCHEMA: 'Timeline.1',
    name: title,
    metadata: {
      'scale-and-slate': {
        framesASecond: `${rate.num}/${rate.den}`,
        dropFrame: rate.drop > 0,
      },
    },
    global_start_time: time(from),
    tracks: {
      OTIO_SCHEMA: 'Stack.1',
      name: 'tracks',
      ...item,
      markers: marks.map((mark) => ({
        OTIO_SCHEMA: 'Marker.2',
        name: markName(mark),
        color: mark.good ? 'GREEN' : 'RED',
        comment: [
          [mark.shot, mark.framing].filter(Boolean).join(', '),
          mark.segment,
          mark.timecode,
          mark.note,
        ]
          .filter(Boolean)
          .join('; '),
        marked_range: range(mark.frame - from, 1),
        metadata: {
          'scale-and-slate': {
            slate: mark.slate,
            take: mark.take,
            good: mark.good,
            clock: mark.clock,
            timecode: mark.timecode,
            note: mark.note,
          },
        },
      })),
      children: [
        {
          OTIO_SCHEMA: 'Track.1',
          name: 'takes',
          kind: 'Video',
          ...item,
          children: [{ OTIO_SCHEMA: 'Gap.1', name: '', ...item, source_range: range(0, length) }],
        },
      ],
    },
  };
  return `${JSON.stringify(timeline, null, 2)}\n`;
}
