import { captionsAs } from '#lib/cut/captions-as';
import { cutEndS } from '#lib/cut/chapters';
import { ButtonLink } from '../../../../_ui/button';
import type { CaptionText, TimelineView } from './read-timeline';

/** Chapters and captions as files. */
export function FilesPart({ timeline }: { readonly timeline: TimelineView }) {
  const { file, captions } = timeline;
  const { segments } = file.episode;
  const here = `/episodes/${file.episode.id}/edit/timeline`;
  const placed = segments.some(({ inFrame }) => inFrame !== null);
  const ended = cutEndS(file.episode) !== null;
  return (
    <section aria-labelledby="files" className="mt-12 print:hidden">
      <h2 id="files">Files</h2>
      {placed && (
        <p className="mt-2 flex flex-wrap items-center gap-3">
          <ButtonLink href={`${here}/chapters.txt`} download>
            Chapter lines
          </ButtonLink>
          {ended && (
            <>
              <ButtonLink href={`${here}/chapters.ffmetadata`} download>
                Chapters, FFmpeg metadata
              </ButtonLink>
              <ButtonLink href={`${here}/chapters.vtt`} download>
                Chapters, WebVTT
              </ButtonLink>
            </>
          )}
        </p>
      )}
      {placed && !ended && (
        <p className="mt-2">
          Say where the last segment ends, and the chapters can be had as FFmpeg metadata and WebVTT
          too: both need an end.
        </p>
      )}
      {captions.map((each) => (
        <Rewritten key={each.text.id} here={here} captions={each} />
      ))}
    </section>
  );
}

function Rewritten({
  here,
  captions: { text, spoken },
}: {
  readonly here: string;
  readonly captions: CaptionText;
}) {
  const own = spoken?.captions;
  if (!own) return null;
  const { other, ending, name } = own.format === 'webvtt' ? TO_SUBRIP : TO_WEBVTT;
  const { left } = captionsAs(own, other);
  return (
    <div className="mt-3 flex flex-wrap items-center gap-x-4 gap-y-1">
      <ButtonLink href={`${here}/captions.${ending}?text=${encodeURIComponent(text.id)}`} download>
        {text.name} as {name}
      </ButtonLink>
      {left.length > 0 && (
        <span className="text-fine">
          {name} has no place for {left.join(', ')}: left out.
        </span>
      )}
    </div>
  );
}

const TO_SUBRIP = { other: 'subrip', ending: 'srt', name: 'SubRip' } as const;
const TO_WEBVTT = { other: 'webvtt', ending: 'vtt', name: 'WebVTT' } as const;
