'use client';

import { useState } from 'react';
import { decodeText } from '#lib/cut/decode-text';
import type { ListOffers } from '#lib/cut/list-offers';
import { frameRate, printTimecode, type FrameRateId } from '#lib/cut/timecode';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { AreaField } from '../../../../_ui/form/field';
import { fieldId, type FormState } from '../../../../_ui/form/form-state';
import { pasteList } from './actions';
import { pointsText, takeField } from './field-names';
import { OfferTick } from './offer-tick';

interface Props {
  readonly episodeId: string;
  readonly rateId: FrameRateId;
  /** Segments that have a place already: an offer for them replaces it. */
  readonly placed: readonly string[];
}

const ID = 'edit-list';

/** Bytes of a file that are taken into the field at most. */
const MOST_BYTES = 12_000_000;

/** What was read last; null before anything was. */
function offerIn({ typed }: FormState): ListOffers | null {
  if (!typed.offer) return null;
  try {
    return JSON.parse(typed.offer) as ListOffers;
  } catch {
    return null;
  }
}

const fieldsOf = (state: FormState): readonly string[] => [
  'list',
  ...(offerIn(state)?.offers ?? []).map(({ id }) => takeField(id)),
];

/** An edit list, pasted or chosen, and once it was read its places, each taken by its tick. */
export function ListForm({ episodeId, rateId, placed }: Props) {
  return (
    <FormFrame id={ID} action={pasteList} hidden={{ episodeId, rate: rateId }} fields={fieldsOf}>
      {(state, pending) => {
        const offer = offerIn(state);
        return (
          <div className="grid gap-4">
            <div className="max-w-3xl min-w-0">
              <AreaField
                form={ID}
                name="list"
                label="Edit list"
                hint="An edit decision list (CMX 3600) or an OpenTimelineIO timeline as JSON."
                state={state}
                control={{ rows: 6, spellCheck: false }}
              />
              <ChooseFile />
            </div>
            <p>
              <Button
                tone={offer ? 'plain' : 'go'}
                name="act"
                value="read"
                aria-disabled={pending || undefined}
              >
                {offer ? 'Read it again' : 'Read the list'}
              </Button>
            </p>
            {offer && (
              <div key={state.attempt} className="grid max-w-3xl gap-4">
                <Offers offer={offer} state={state} rateId={rateId} placed={placed} />
                {offer.offers.length > 0 && (
                  <p>
                    <Button tone="go" name="act" value="take" aria-disabled={pending || undefined}>
                      Take the ticked places
                    </Button>
                  </p>
                )}
              </div>
            )}
          </div>
        );
      }}
    </FormFrame>
  );
}

/** Puts a file's text into the field, where it can be looked at before it is read. */
function ChooseFile() {
  const [told, setTold] = useState('');
  const take = async (file: File) => {
    if (file.size > MOST_BYTES) {
      setTold(`${file.name} is larger than 12 MB: give the list of one episode.`);
      return;
    }
    const { text, encoding, certain } = decodeText(new Uint8Array(await file.arrayBuffer()));
    const field = document.getElementById(fieldId(ID, 'list'));
    if (field instanceof HTMLTextAreaElement) field.value = text;
    setTold(`${file.name} stands in the field${certain ? '' : `, read as ${encoding}`}.`);
  };
  return (
    <p className="mt-2 flex flex-wrap items-center gap-3">
      <label htmlFor={`${ID}-file`} className="font-semibold">
        Or choose its file
      </label>
      <input
        id={`${ID}-file`}
        type="file"
        accept=".edl,.otio,.json,.txt"
        className="max-w-full min-w-0 py-2.5"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) void take(file);
        }}
      />
      <span role="status" className="text-fine text-soft">
        {told}
      </span>
    </p>
  );
}

/** Remarks on a list that are told; the rest are counted. */
const TOLD = 50;

interface OffersProps {
  readonly offer: ListOffers;
  readonly state: FormState;
  readonly rateId: FrameRateId;
  readonly placed: readonly string[];
}

function Offers({ offer, state, rateId, placed }: OffersProps) {
  const rate = frameRate(rateId);
  const { format, title, offers, missing, remarks } = offer;
  const place = format === 'edl' ? 'line' : 'number';
  return (
    <>
      <input type="hidden" name="shown" value={pointsText(offers)} />
      <p>
        {format === 'edl' ? 'An edit decision list' : 'An OpenTimelineIO timeline'}
        {title === '' ? '' : `, “${title}”`}. Its first picture is taken for the beginning of the
        cut.
      </p>
      <ol>
        {offers.map(({ id, title: name, inFrame, outFrame, clips }) => (
          <OfferTick
            key={id}
            form={ID}
            name={takeField(id)}
            state={state}
            initial={!placed.includes(id)}
            label={
              <>
                <b className="font-semibold">{name}</b> {printTimecode(inFrame, rate)} to{' '}
                {printTimecode(outFrame, rate)}
              </>
            }
          >
            <span className="text-soft">clips: {clips.join(', ')}</span>
          </OfferTick>
        ))}
      </ol>
      {missing.length > 0 && <p>No clip names: {missing.join(', ')}.</p>}
      {remarks.length > 0 && (
        <div>
          <h3>Skipped, or odd</h3>
          <ul className="mt-1 max-h-80 overflow-y-auto text-fine">
            {remarks.slice(0, TOLD).map(({ at, code, message, skipped }, index) => (
              <li key={`${at} ${code} ${index}`} className="mb-1">
                <span className="text-soft">
                  {place} {at}
                  {skipped ? ', skipped' : ''}:
                </span>{' '}
                {message}
              </li>
            ))}
            {remarks.length > TOLD && <li>And {remarks.length - TOLD} more.</li>}
          </ul>
        </div>
      )}
    </>
  );
}
