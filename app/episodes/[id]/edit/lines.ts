import type { PlacedText } from '#lib/claims/places/placed-text';
import type { TranscriptText } from './_components/view';

/** Texts with their lines, as short as they can be sent. */
export function transcriptTexts(texts: readonly PlacedText[]): TranscriptText[] {
  return texts.map(({ said, text, lines }) => ({
    ...said,
    text,
    starts: lines.map(({ start }) => start),
    times: lines.map(({ startMs }) => startMs),
  }));
}
