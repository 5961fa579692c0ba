import { USUAL_WORDS_PER_MINUTE } from '#lib/cut/speaking-rate';
import { ButtonForm } from '../../../../_forms/button-form';
import { Disclosure } from '../../../../_ui/disclosure';
import type { TimelineView } from './read-timeline';
import { forgetSpeakingRate, keepSpeakingRate } from './speaking-actions';
import { SpeakingRateForm } from './speaking-rate-form';

/** The person's speaking rate: what is reckoned with, what captions measure, and the way to say it. */
export function SpeakingRate({ timeline }: { readonly timeline: TimelineView }) {
  const { file, captions, runtime } = timeline;
  const episodeId = file.episode.id;
  const own = file.creator.wordsPerMinute;
  return (
    <section aria-labelledby="speaking" className="mt-8 max-w-3xl">
      <h3 id="speaking">How fast you speak</h3>
      <p className="mt-1">
        Reckoned with <b className="font-semibold">{runtime.perMinute} words a minute</b>
        {own === null
          ? `: about ${USUAL_WORDS_PER_MINUTE} is usual for narration in US English (National Center for Voice and Speech), until you say your own.`
          : ', your own rate, in every episode.'}
      </p>
      {captions.map(({ text, perMinute }) => (
        <div key={text.id} className="mt-2 flex flex-wrap items-center gap-x-4 gap-y-1">
          <span>
            {perMinute === null
              ? `${text.name}: too few words with times to measure.`
              : `${text.name}: ${perMinute} words a minute, pauses of two seconds and more left out.`}
          </span>
          {perMinute !== null && perMinute !== own && (
            <ButtonForm
              action={keepSpeakingRate}
              values={{ episodeId, perMinute }}
              label={`Keep ${perMinute} as mine, from ${text.name}`}
              tone="plain"
            >
              Keep {perMinute} as mine
            </ButtonForm>
          )}
        </div>
      ))}
      <div className="mt-2">
        {own !== null && (
          <ButtonForm action={forgetSpeakingRate} values={{ episodeId }}>
            Reckon with {USUAL_WORDS_PER_MINUTE} again
          </ButtonForm>
        )}
        <Disclosure words="Type your own rate">
          <SpeakingRateForm episodeId={episodeId} initial={own === null ? '' : String(own)} />
        </Disclosure>
      </div>
    </section>
  );
}
