'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { ChoiceField, TextField } from '../../../_ui/form/field';
import { answerDay } from '../actions';

interface Props {
  readonly episodeId: string;
  readonly rev: number;
  readonly kind: string;
  readonly what: string;
}

const FORM = 'day-answer';
const ANSWERS = [
  { value: '', words: 'not answered yet' },
  { value: 'nothing', words: 'nothing else' },
  { value: 'notCounted', words: 'yes, and not counted here' },
];

/** Asks what else was eaten, since only then is the sum a day's. */
export function DayAnswerForm({ episodeId, rev, kind, what }: Props) {
  return (
    <FormFrame id={FORM} action={answerDay} hidden={{ episodeId, rev }} fields={['kind', 'what']}>
      {(state) => (
        <div className="grid max-w-xl gap-4">
          <ChoiceField
            form={FORM}
            name="kind"
            label="Anything else today, off camera, drinks?"
            choices={ANSWERS}
            initial={kind}
            state={state}
          />
          <TextField
            form={FORM}
            name="what"
            label="What, if not counted"
            initial={what}
            state={state}
          />
          <div>
            <Button>Save the answer</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
