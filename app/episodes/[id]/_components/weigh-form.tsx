'use client';

import { useState, type ChangeEvent } from 'react';
import { FormFrame } from '../../../_forms/form-frame';
import type { FormAction } from '../../../_forms/parse-then-act';
import { Button, ButtonLink } from '../../../_ui/button';
import { ChoiceField, type Choice } from '../../../_ui/form/field';
import type { FormState } from '../../../_ui/form/form-state';
import type { WeighedOf } from '#lib/episode/typed-weighing';
import { PARTS } from '../weigh-field-names';
import { LeftWhere } from './line-left-fields';
import { ScaleField } from './weigh-field';
import { WeighShares, type Sharing } from './weigh-shares';
import { WeighWays, type Held } from './weigh-ways';
import { typedWords } from './weigh-typed';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly of: WeighedOf;
  readonly scales: readonly Choice[];
  readonly scaleId: string;
  readonly held: Held;
  /** Ingredients that may share the reading; none for a finished dish. */
  readonly sharing?: Sharing;
  /** Where what is left stays, and what it is; for what is left alone. */
  readonly left?: { readonly where: string; readonly made: string };
  /** The ingredient that comes next, whose scale may open at once. */
  readonly next?: { readonly id: string; readonly text: string } | null;
  readonly submit: string;
  readonly cancelHref?: string;
}

/** What a scale shows. The one field that is always there comes first; the time is taken when it is sent. */
export function WeighForm(props: Props) {
  const { id, action, hidden, sharing } = props;
  const fields = ['gross', 'tare', 'after', 'scaleId', 'method', 'leftWhere', 'leftMade'];
  const parts = (sharing?.all ?? []).map((each) => `${PARTS}${each.id}`);
  return (
    <FormFrame id={id} action={action} hidden={hidden} fields={[...fields, ...parts]}>
      {(state, pending) => <WeighFields {...props} state={state} pending={pending} />}
    </FormFrame>
  );
}

function WeighFields(props: Props & { readonly state: FormState; readonly pending: boolean }) {
  const { id, of, scales, scaleId, held, sharing, left, next, submit, cancelHref } = props;
  const { state, pending } = props;
  const [words, setWords] = useState('');
  const read = ({ currentTarget }: ChangeEvent<HTMLDivElement>) => {
    const form = currentTarget.closest('form');
    if (form) setWords(typedWords(new FormData(form), of, held) ?? '');
  };
  return (
    <div className="group/ways grid max-w-xl gap-4 max-md:[&_select]:min-h-14" onChange={read}>
      <ScaleField form={id} state={state} name="gross" label="On the scale, g" large />
      <p role="status" className="min-h-6 font-semibold">
        {words}
      </p>
      <WeighWays form={id} state={state} of={of} held={held} />
      {scales.length > 1 ? (
        <ChoiceField
          form={id}
          state={state}
          name="scaleId"
          label="Scale"
          choices={scales}
          initial={scaleId}
        />
      ) : (
        <input type="hidden" name="scaleId" value={scaleId} />
      )}
      {left && <LeftWhere form={id} state={state} where={left.where} made={left.made} />}
      {sharing && <WeighShares form={id} state={state} sharing={sharing} />}
      <div className="grid gap-3">
        <Button tone="go" size="day" aria-disabled={pending || undefined}>
          {submit}
        </Button>
        {next && (
          <Button size="day" name="next" value={next.id} aria-disabled={pending || undefined}>
            {`Keep, then weigh ${next.text}`}
          </Button>
        )}
        {cancelHref && (
          <ButtonLink href={cancelHref} size="day" scroll={false}>
            Close
          </ButtonLink>
        )}
      </div>
    </div>
  );
}
