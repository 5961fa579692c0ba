'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { ChoiceField, TextField, TickField, type Choice } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import type { FitRow } from '#lib/swap/fit-form-rows';
import { lookForFit } from '../actions';
import { ANY_STEP, FIELD } from '../field-names';

/** A target of the episode that a fit may keep to. */
export interface TargetRow {
  readonly id: string;
  readonly words: string;
  readonly ticked: boolean;
}

/** A nutrient with limits of the person's own, as text. */
export interface LimitRow {
  readonly nutrient: string;
  readonly label: string;
  readonly least: string;
  readonly most: string;
}

interface Props {
  readonly hidden: Readonly<Record<string, string>>;
  readonly targets: readonly TargetRow[];
  readonly limits: readonly LimitRow[];
  readonly parts: readonly Choice[];
  readonly part: string;
  readonly lines: readonly FitRow[];
  readonly strict: boolean;
}

const ID = 'fit';

/** What a dish should come to, and how each of its ingredients may change for it. */
export function FitForm(props: Props) {
  const { hidden, targets, limits, lines } = props;
  const fields = [
    'portionId',
    ...targets.map(({ id }) => `${FIELD.target}${id}`),
    ...limits.flatMap(({ nutrient }) => [
      `${FIELD.atLeast}${nutrient}`,
      `${FIELD.atMost}${nutrient}`,
    ]),
    ...lines.flatMap(({ lineId }) => [
      `${FIELD.low}${lineId}`,
      `${FIELD.high}${lineId}`,
      `${FIELD.step}${lineId}`,
    ]),
  ];
  return (
    <FormFrame id={ID} action={lookForFit} hidden={hidden} fields={fields}>
      {(state, pending) => (
        <div className="grid gap-8">
          <Goals {...props} state={state} />
          <fieldset>
            <legend className="font-slate text-head font-semibold">What may change</legend>
            <ul className="mt-1">
              {lines.map((line) => (
                <li key={line.lineId} className="border-b border-line py-2">
                  <LineFields line={line} state={state} />
                </li>
              ))}
            </ul>
          </fieldset>
          <div>
            <TickField
              form={ID}
              state={state}
              name="strict"
              label="Met whatever the range: also where every source stands at its worst end"
              initial={props.strict}
            />
            <div className="mt-3">
              <Button tone="go" aria-disabled={pending || undefined}>
                Find the amounts
              </Button>
            </div>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

function Goals({ targets, limits, parts, part, state }: Props & { readonly state: FormState }) {
  return (
    <fieldset>
      <legend className="font-slate text-head font-semibold">What it should come to</legend>
      {targets.map(({ id, words, ticked }) => (
        <TickField
          key={id}
          form={ID}
          state={state}
          name={`${FIELD.target}${id}`}
          label={words}
          initial={ticked}
        />
      ))}
      <div className="mt-3 max-w-md">
        <ChoiceField
          form={ID}
          state={state}
          name="portionId"
          label="Limits of your own are of"
          choices={parts}
          initial={part}
        />
      </div>
      <div className="mt-3 grid gap-3">
        {limits.map(({ nutrient, label, least, most }) => (
          <div key={nutrient} className="grid grid-cols-2 items-end gap-3 md:max-w-md">
            <TextField
              form={ID}
              state={state}
              name={`${FIELD.atLeast}${nutrient}`}
              label={`${label}, at least`}
              initial={least}
              control={{ inputMode: 'decimal', autoComplete: 'off' }}
            />
            <TextField
              form={ID}
              state={state}
              name={`${FIELD.atMost}${nutrient}`}
              label={`${label}, at most`}
              initial={most}
              control={{ inputMode: 'decimal', autoComplete: 'off' }}
            />
          </div>
        ))}
      </div>
    </fieldset>
  );
}

function LineFields({ line, state }: { readonly line: FitRow; readonly state: FormState }) {
  const { lineId, text, now, why, fixed, low, high, stepMg, steps } = line;
  const grams = now === null ? 'grams not known' : `${now} g now`;
  if (why !== null) {
    return (
      <p>
        {text}
        <span className="block text-fine text-soft">
          {grams}; stays as it is: {why}
        </span>
      </p>
    );
  }
  const field = { form: ID, state };
  const chosen = stepMg === null ? ANY_STEP : String(stepMg);
  const choices = steps.map((step) => ({
    value: step.stepMg === null ? ANY_STEP : String(step.stepMg),
    words: step.words,
  }));
  const listed = choices.some(({ value }) => value === chosen)
    ? choices
    : [...choices, { value: chosen, words: 'as before' }];
  const control = { inputMode: 'decimal', autoComplete: 'off' } as const;
  return (
    <fieldset className="grid gap-x-6 gap-y-1 md:grid-cols-[minmax(0,1fr)_auto]">
      <legend className="unseen">{text}</legend>
      <div>
        {text}
        <span className="block text-fine text-soft">{grams}</span>
        <TickField
          {...field}
          name={`${FIELD.fixed}${lineId}`}
          label="stays as it is"
          initial={fixed}
        />
      </div>
      <div className="grid grid-cols-[1fr_1fr_1.5fr] items-end gap-2 md:w-96">
        <TextField
          {...field}
          name={`${FIELD.low}${lineId}`}
          label="from, g"
          initial={low}
          control={control}
        />
        <TextField
          {...field}
          name={`${FIELD.high}${lineId}`}
          label="to, g"
          initial={high}
          control={control}
        />
        <ChoiceField
          {...field}
          name={`${FIELD.step}${lineId}`}
          label="in steps of"
          choices={listed}
          initial={chosen}
        />
      </div>
    </fieldset>
  );
}
