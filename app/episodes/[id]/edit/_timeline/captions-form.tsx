'use client';

import type { CaptionOffer } from '#lib/cut/caption-offers';
import { lengthWords } from '#lib/cut/length-words';
import { frameRate, printTimecode, secondsBetween, type FrameRateId } from '#lib/cut/timecode';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { takeFromCaptions } from './actions';
import { pointsText, takeField } from './field-names';
import { OfferTick } from './offer-tick';

interface Props {
  readonly episodeId: string;
  readonly textId: string;
  readonly rateId: FrameRateId;
  readonly offers: readonly CaptionOffer[];
}

/** Where captions let segments begin, each to be looked at and taken by its tick. */
export function CaptionsForm({ episodeId, textId, rateId, offers }: Props) {
  const id = `from-${textId}`;
  const rate = frameRate(rateId);
  const shown = pointsText(offers.map((one) => ({ ...one, outFrame: null })));
  return (
    <FormFrame
      id={id}
      action={takeFromCaptions}
      hidden={{ episodeId, textId, rate: rateId, shown }}
      fields={offers.map((one) => takeField(one.id))}
    >
      {(state, pending) => (
        <>
          <ol>
            {offers.map((offer) => (
              <OfferTick
                key={`${offer.id} ${offer.inFrame}`}
                form={id}
                name={takeField(offer.id)}
                state={state}
                initial={offer.nowFrame === null}
                label={
                  <>
                    <b className="font-semibold">{offer.title}</b> begins at{' '}
                    {printTimecode(offer.inFrame, rate)}
                    <span className="text-fine text-soft">
                      {' '}
                      {nowWords(offer, lengthWords(secondsBetween(0, offer.inFrame, rate) ?? 0))}
                    </span>
                  </>
                }
              >
                <q className="block max-w-[65ch]">{offer.said.join(' ')}</q>
                <span className="text-soft">
                  line {offer.line}; its words: {offer.words.join(', ')}
                </span>
              </OfferTick>
            ))}
          </ol>
          <p className="mt-4">
            <Button tone="go" aria-disabled={pending || undefined}>
              Take the ticked beginnings
            </Button>
          </p>
        </>
      )}
    </FormFrame>
  );

  function nowWords({ inFrame, nowFrame }: CaptionOffer, clock: string): string {
    if (nowFrame === null) return `(${clock}), it has no place yet`;
    if (nowFrame === inFrame) return `(${clock}), as it stands now`;
    return `(${clock}), now ${printTimecode(nowFrame, rate)}`;
  }
}
