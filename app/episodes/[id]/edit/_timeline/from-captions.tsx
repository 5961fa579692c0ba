import { captionOffers } from '#lib/cut/caption-offers';
import type { FrameRate } from '#lib/cut/timecode';
import { ButtonLink } from '../../../../_ui/button';
import { CaptionsForm } from './captions-form';
import type { CaptionText, TimelineView } from './read-timeline';

interface Props {
  readonly timeline: TimelineView;
  readonly rate: FrameRate;
  /** The captions that were asked for by their id; null for the first. */
  readonly asked: string | null;
}

/** In-points from what is said. */
export function FromCaptions({ timeline, rate, asked }: Props) {
  const { captions } = timeline;
  const chosen = captions.find(({ text }) => text.id === asked) ?? captions[0];
  return (
    <section aria-labelledby="from-captions" className="mt-12 print:hidden">
      <h2 id="from-captions">Beginnings from captions</h2>
      {chosen === undefined ? (
        <p className="mt-1 max-w-[70ch] text-soft">
          Once captions or a transcript with times are loaded on the page of the edit, this says
          where in them each segment seems to begin.
        </p>
      ) : (
        <>
          <p className="mt-1 mb-3 max-w-[70ch] text-soft">
            Where the words of a title and of its talking points are said first, in{' '}
            {chosen.text.name}. Nothing is taken before you press; a segment above that had no end,
            or ended there, ends where the next begins.
          </p>
          {captions.length > 1 && (
            <p className="mb-3 flex flex-wrap gap-3">
              {captions.map(({ text }) => (
                <ButtonLink
                  key={text.id}
                  href={`?captions=${encodeURIComponent(text.id)}#from-captions`}
                  size="small"
                  scroll={false}
                >
                  {text.name}
                </ButtonLink>
              ))}
            </p>
          )}
          <Offers timeline={timeline} rate={rate} chosen={chosen} />
        </>
      )}
    </section>
  );
}

function Offers({
  timeline: { file, points, sought },
  rate,
  chosen,
}: {
  readonly timeline: TimelineView;
  readonly rate: FrameRate;
  readonly chosen: CaptionText;
}) {
  const lines = chosen.spoken?.lines ?? [];
  if (!lines.some(({ startMs }) => startMs !== null)) {
    return <p>There is no time in it that can be read.</p>;
  }
  const { offers, missing } = captionOffers(points, sought, lines, rate);
  return (
    <>
      {offers.length > 0 && (
        <CaptionsForm
          key={chosen.text.id}
          episodeId={file.episode.id}
          textId={chosen.text.id}
          rateId={rate.id}
          offers={offers}
        />
      )}
      {missing.length > 0 && (
        <p className="mt-3 max-w-[70ch]">Not found in it: {missing.join(', ')}.</p>
      )}
    </>
  );
}
