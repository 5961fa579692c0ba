'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { AreaField } from '../../../../../_ui/form/field';
import { keepComment } from '../actions';

/** A viewer's comment, as it was pasted. */
export function CommentForm({ episodeId }: { readonly episodeId: string }) {
  return (
    <FormFrame id="viewer-comment" action={keepComment} hidden={{ episodeId }} fields={['comment']}>
      {(state, pending) => (
        <div className="grid max-w-3xl gap-3">
          <AreaField
            form="viewer-comment"
            state={state}
            name="comment"
            label="The viewer’s comment"
            hint="Paste it as it stands. It is kept here, and goes nowhere else."
            control={{ rows: 3, dir: 'auto' }}
          />
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              Look for what gives their number
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
