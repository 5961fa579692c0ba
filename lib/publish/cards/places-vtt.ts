import type { Aside, Cue } from '#lib/cut/captions';
import { secondsOf, type FrameRate } from '#lib/cut/timecode';
import { writeWebVtt } from '#lib/cut/write-captions';
import { placeWords, type CardPlaces } from '#lib/publish/cards/card-places';

/**
 * Where each card goes as WebVTT metadata (W3C WebVTT, 1.5 "Metadata"): a cue for each, in the order of their times,
 * whose text is one JSON object with the file, its frames and timecode; times to the nearest millisecond. Cards without a
 * place stand in a note.
 */
export function placesVtt({ rate, places }: CardPlaces): string {
  const cues = places
    .flatMap((place): Cue[] => {
      const { span, file } = place;
      const at = placeWords(place, rate);
      if (!span || !rate || !at) return [];
      const data = {
        file: `${file.name}.png`,
        card: file.card.kind,
        title: file.card.title,
        inFrame: span.inFrame,
        outFrame: span.outFrame,
        framesASecond: `${rate.num}/${rate.den}`,
        ...{ in: at.from, out: at.to },
      };
      return [
        {
          ...{ kind: 'cue', name: file.name, settings: '', line: 0 },
          startMs: milliseconds(span.inFrame, rate),
          endMs: milliseconds(span.outFrame, rate),
          // An arrow is no part of a cue's text; JSON has another way to write its end.
          text: JSON.stringify(data).replaceAll('-->', '--\\u003e'),
        },
      ];
    })
    .sort((a, b) => a.startMs - b.startMs || (a.name < b.name ? -1 : 1));
  const waiting = places.flatMap(({ file, why }) =>
    why === null ? [] : `${file.name}.png: ${why}`,
  );
  const note: Aside[] =
    waiting.length === 0
      ? []
      : [{ kind: 'note', line: 0, text: noteOf(['NOTE No place yet', ...waiting]) }];
  return writeWebVtt({ format: 'webvtt', head: '', blocks: [...note, ...cues], remarks: [] });
}

const noteOf = (lines: readonly string[]): string => lines.join('\n').replaceAll('-->', '->');

function milliseconds(frame: number, rate: FrameRate): number {
  const { num, den } = secondsOf(frame, rate);
  return Math.round((num * 1000) / den);
}
