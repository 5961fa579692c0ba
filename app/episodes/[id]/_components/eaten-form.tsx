'use client';

import { useState } from 'react';
import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';
import { saveEaten } from '../eaten-actions';
import type { EatenWay } from '../eaten-schema';

/** What was eaten of a dish, as its form shows it. */
export interface EatenTexts {
  readonly way: EatenWay;
  readonly share: string;
  readonly spread: string;
  readonly spreadFrom: string;
  readonly grams: string;
}

interface Props {
  readonly episodeId: string;
  readonly segmentId: string;
  readonly rev: number;
  readonly texts: EatenTexts;
  readonly scales: readonly Choice[];
}

const WAYS: readonly { readonly value: EatenWay; readonly words: string }[] = [
  { value: 'all', words: 'all of it' },
  { value: 'share', words: 'a part, exactly' },
  { value: 'byEye', words: 'a part, by eye' },
  { value: 'mass', words: 'grams of the finished dish' },
  { value: 'plate', words: 'the plate weighed before and after' },
  { value: 'none', words: 'none of it' },
];
const SCALE = { inputMode: 'decimal', autoComplete: 'off' } as const;

/** How much of a dish was eaten, and how that is known. */
export function EatenForm(props: Props) {
  const { episodeId, segmentId, rev } = props;
  return (
    <FormFrame
      id={`eaten-${segmentId}`}
      action={saveEaten}
      hidden={{ episodeId, segmentId, rev }}
      fields={['way', 'share', 'spread', 'grams', 'before', 'after', 'scaleId']}
    >
      {(state) => <EatenFields {...props} state={state} />}
    </FormFrame>
  );
}

function EatenFields({ segmentId, texts, scales, state }: Props & { readonly state: FormState }) {
  const form = `eaten-${segmentId}`;
  const sent = WAYS.find(({ value }) => value === state.typed.way)?.value ?? texts.way;
  const [way, setWay] = useState<EatenWay>(sent);
  const at = { form, state };
  return (
    <div className="grid max-w-xl gap-4">
      <ChoiceField
        {...at}
        name="way"
        label="I ate"
        choices={WAYS}
        initial={sent}
        control={{ onChange: ({ target }) => setWay(target.value as EatenWay) }}
      />
      {(way === 'share' || way === 'byEye') && (
        <TextField
          {...at}
          name="share"
          label="Part of the dish"
          hint="As 1/2 or 1/3."
          initial={texts.share}
        />
      )}
      {way === 'byEye' && (
        <TextField
          {...at}
          name="spread"
          label="May miss by, ± %"
          hint={texts.spreadFrom}
          initial={texts.spread}
          control={SCALE}
        />
      )}
      {way === 'mass' && (
        <TextField
          {...at}
          name="grams"
          label="Grams"
          hint="As 350, or with a range: 350 ± 10."
          initial={texts.grams}
          control={SCALE}
        />
      )}
      {way === 'plate' && (
        <>
          <div className="grid grid-cols-2 gap-4">
            <TextField {...at} name="before" label="Plate before, g" control={SCALE} />
            <TextField {...at} name="after" label="Plate after, g" control={SCALE} />
          </div>
          {scales.length > 1 && (
            <ChoiceField {...at} name="scaleId" label="Scale" choices={scales} />
          )}
        </>
      )}
      <div>
        <Button>Save what I ate</Button>
      </div>
    </div>
  );
}
