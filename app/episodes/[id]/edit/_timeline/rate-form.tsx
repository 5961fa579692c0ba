'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { ChoiceField, type Choice } from '../../../../_ui/form/field';
import { saveRate } from './actions';

interface Props {
  readonly episodeId: string;
  readonly rev: number;
  readonly rates: readonly Choice[];
  readonly rate: string;
  /** Whether any segment has a place already, which a change of rate must keep in one way or the other. */
  readonly placed: boolean;
}

const ID = 'frame-rate';
const KEEPS: readonly Choice[] = [
  { value: '', words: 'Choose' },
  { value: 'times', words: 'Times: each point goes to the nearest frame' },
  { value: 'frames', words: 'Frame counts: they were counted at this rate all along' },
];

/** How many frames a second the cut has. */
export function RateForm({ episodeId, rev, rates, rate, placed }: Props) {
  return (
    <FormFrame id={ID} action={saveRate} hidden={{ episodeId, rev }} fields={['rate', 'keeps']}>
      {(state, pending) => (
        <div className="grid max-w-3xl gap-4">
          <div className="grid items-end gap-4 md:grid-cols-2">
            <ChoiceField
              form={ID}
              name="rate"
              label="Frames a second"
              choices={rates}
              initial={rate}
              state={state}
            />
            {placed && (
              <ChoiceField
                form={ID}
                name="keeps"
                label="What stays of places that are there"
                choices={KEEPS}
                state={state}
              />
            )}
          </div>
          <p>
            <Button tone="plain" aria-disabled={pending || undefined}>
              Count at this rate
            </Button>
          </p>
        </div>
      )}
    </FormFrame>
  );
}
