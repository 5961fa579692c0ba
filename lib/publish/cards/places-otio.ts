import type { FrameRate } from '#lib/cut/timecode';
import type { CardPlace, CardPlaces } from '#lib/publish/cards/card-places';

type Placed = CardPlace & { readonly span: NonNullable<CardPlace['span']> };

/**
 * The cards as stills on tracks of an OpenTimelineIO timeline, JSON (Academy Software Foundation; objects `Timeline.1`,
 * `Stack.1`, `Track.1`, `Gap.1`, `Clip.2`, `ExternalReference.1`, `TimeRange.1`, `RationalTime.1` as its own files have
 * them). Each still's address is its file's name, beside which the timeline lies. What stands over another card is on a
 * track of its own. Null where no timecode is written at the cut's rate.
 */
export function placesOtio({ title, rate, places }: CardPlaces): string | null {
  if (!rate) return null;
  const placed = places
    .filter((place): place is Placed => place.span !== null)
    .sort((a, b) => a.span.inFrame - b.span.inFrame);
  const timeline = {
    OTIO_SCHEMA: 'Timeline.1',
    name: title,
    metadata: {
      'scale-and-slate': { framesASecond: `${rate.num}/${rate.den}`, dropFrame: rate.drop > 0 },
    },
    global_start_time: time(0, rate),
    tracks: {
      OTIO_SCHEMA: 'Stack.1',
      name: 'tracks',
      ...item(),
      children: tracksOf(placed).map((track, index) => ({
        OTIO_SCHEMA: 'Track.1',
        name: `cards ${index + 1}`,
        kind: 'Video',
        ...item(),
        children: track.flatMap((place, at) => {
          const before = track[at - 1]?.span.outFrame ?? 0;
          const gap = place.span.inFrame - before;
          return [...(gap > 0 ? [gapOf(gap, rate)] : []), clipOf(place, rate)];
        }),
      })),
    },
  };
  return `${JSON.stringify(timeline, null, 2)}\n`;
}

/** Each on the first track that is free; one track at least. */
function tracksOf(placed: readonly Placed[]): Placed[][] {
  const tracks: Placed[][] = [[]];
  for (const place of placed) {
    const free = tracks.find((track) => (track.at(-1)?.span.outFrame ?? 0) <= place.span.inFrame);
    if (free) free.push(place);
    else tracks.push([place]);
  }
  return tracks;
}

const item = () => ({
  metadata: {},
  source_range: null,
  effects: [],
  markers: [],
  enabled: true,
});

function time(value: number, rate: FrameRate) {
  return { OTIO_SCHEMA: 'RationalTime.1', rate: rate.num / rate.den, value };
}

function range(duration: number, rate: FrameRate) {
  return {
    OTIO_SCHEMA: 'TimeRange.1',
    start_time: time(0, rate),
    duration: time(duration, rate),
  };
}

function gapOf(frames: number, rate: FrameRate) {
  return { OTIO_SCHEMA: 'Gap.1', name: '', ...item(), source_range: range(frames, rate) };
}

function clipOf({ file, span }: Placed, rate: FrameRate) {
  const own = range(span.outFrame - span.inFrame, rate);
  return {
    OTIO_SCHEMA: 'Clip.2',
    name: file.card.title === '' ? file.name : file.card.title,
    ...item(),
    source_range: own,
    media_references: {
      DEFAULT_MEDIA: {
        OTIO_SCHEMA: 'ExternalReference.1',
        name: file.name,
        metadata: {},
        available_range: own,
        available_image_bounds: null,
        target_url: `${file.name}.png`,
      },
    },
    active_media_reference_key: 'DEFAULT_MEDIA',
  };
}
