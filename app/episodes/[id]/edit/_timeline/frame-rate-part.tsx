import { FRAME_RATE_IDS, frameRate } from '#lib/cut/timecode';
import { Disclosure } from '../../../../_ui/disclosure';
import { RateForm } from './rate-form';
import type { TimelineView } from './read-timeline';

const RATES = FRAME_RATE_IDS.map((value) => ({ value, words: frameRate(value).words }));
const CHOOSE = { value: '', words: 'Choose' };

/** The episode's rate, and the way to another; it stands open where the rate is none that timecode is written at. */
export function FrameRatePart({ timeline }: { readonly timeline: TimelineView }) {
  const { file, revs, rate, points } = timeline;
  const { id, rate: own } = file.episode;
  const twin = rate !== null && FRAME_RATE_IDS.map(frameRate).some((one) => isTwin(one, rate));
  return (
    <div className="mt-3">
      {rate === null && (
        <p className="mb-2">
          This episode counts {own.num}/{own.den} frames a second, a rate at which no timecode is
          written: choose one, then places can be typed and taken.
        </p>
      )}
      {twin && (
        <p className="mb-1 max-w-[70ch] text-fine text-soft">
          Frames are numbered as {rate.words}. With drop frame or without, the frames themselves are
          the same.
        </p>
      )}
      <Disclosure words="Another rate" open={rate === null}>
        <RateForm
          episodeId={id}
          rev={revs[id] ?? 0}
          rates={rate === null ? [CHOOSE, ...RATES] : RATES}
          rate={rate?.id ?? ''}
          placed={points.some(({ inFrame, outFrame }) => inFrame !== null || outFrame !== null)}
        />
      </Disclosure>
    </div>
  );
}

type Rate = ReturnType<typeof frameRate>;
/** The same rate, numbered in the other way. */
const isTwin = (one: Rate, rate: Rate): boolean =>
  one.num === rate.num && one.den === rate.den && one.id !== rate.id;
