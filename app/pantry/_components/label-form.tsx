'use client';

import Link from 'next/link';
import type { ReactNode } from 'react';
import { FormFrame } from '../../_forms/form-frame';
import type { FormAction } from '../../_forms/parse-then-act';
import { Button } from '../../_ui/button';
import { AreaField, ChoiceField, TextField, type Choice } from '../../_ui/form/field';
import type { FormState } from '../../_ui/form/form-state';
import { STATE_WORDS } from '../../_ui/words';
import { STATES } from '#lib/foods/food';
import { LABEL_PANELS, panelNutrients } from '#lib/foods/label-panel';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { SECOND, VALUE } from '../field-names';
import type { PanelRule } from './label-texts';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly rule: PanelRule;
  readonly texts: Readonly<Record<string, string>>;
  readonly submit: string;
  readonly cancelHref: string;
  /** What is asked before the label itself: the food's name and place, where it is a new one. */
  readonly before?: (state: FormState) => ReactNode;
  /** What is asked after it: allergens, pack and price. */
  readonly after?: (state: FormState) => ReactNode;
  readonly moreFields?: readonly string[];
}

const BASES: readonly Choice[] = [
  { value: 'serving', words: 'per serving' },
  { value: 'per100g', words: 'per 100 g' },
  { value: 'per100ml', words: 'per 100 ml' },
];
const SECOND_BASES: readonly Choice[] = [
  { value: '', words: 'no second column' },
  { value: 'per100g', words: 'per 100 g' },
  { value: 'per100ml', words: 'per 100 ml' },
];
const CARB_BASES: readonly Choice[] = [
  { value: 'total', words: 'inside carbohydrate (US labels)' },
  { value: 'available', words: 'beside carbohydrate (EU labels)' },
];
const STATE_CHOICES: readonly Choice[] = STATES.map((value) => ({
  value,
  words: STATE_WORDS[value],
}));
const OWN_FIELDS = [
  'servingG',
  'servingMl',
  'servingText',
  'perPack',
  'basis',
  'secondBasis',
  'carbBasis',
  'state',
  'keepReason',
];

/** A package label as it is printed: the serving first, then the values in the order of its panel. */
export function LabelForm(props: Props) {
  const { id, action, hidden, rule, texts, submit, cancelHref, before, after } = props;
  const fields = [
    ...(props.moreFields ?? []),
    ...OWN_FIELDS,
    ...panelNutrients(rule).flatMap((name) => [`${VALUE}${name}`, `${SECOND}${name}`]),
  ];
  return (
    <FormFrame id={id} action={action} fields={fields} hidden={{ ...hidden, rule }}>
      {(state, pending) => {
        const common = { form: id, state };
        const text = (name: string) => texts[name] ?? '';
        return (
          <div className="grid gap-8">
            {before?.(state)}
            <Part legend="Serving, as printed">
              <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-4">
                <TextField
                  {...common}
                  name="servingText"
                  label="Words"
                  initial={text('servingText')}
                  control={{ placeholder: '2 slices' }}
                />
                <Digits {...common} name="servingG" label="Grams" initial={text('servingG')} />
                <Digits
                  {...common}
                  name="servingMl"
                  label="or millilitres"
                  initial={text('servingMl')}
                />
                <Digits
                  {...common}
                  name="perPack"
                  label="Servings in a pack"
                  initial={text('perPack')}
                />
              </div>
            </Part>
            <Part legend="What the values are for">
              <div className="grid items-end gap-4 md:grid-cols-4">
                <ChoiceField
                  {...common}
                  name="basis"
                  label="Values"
                  choices={BASES}
                  initial={text('basis')}
                />
                <ChoiceField
                  {...common}
                  name="secondBasis"
                  label="Second column"
                  choices={SECOND_BASES}
                  initial={text('secondBasis')}
                />
                <ChoiceField
                  {...common}
                  name="carbBasis"
                  label="Fibre is"
                  choices={CARB_BASES}
                  initial={text('carbBasis')}
                />
                <ChoiceField
                  {...common}
                  name="state"
                  label="They hold for it"
                  choices={STATE_CHOICES}
                  initial={text('state')}
                />
              </div>
            </Part>
            <Part legend="Values, as printed">
              <p className="mb-3 max-w-[65ch] text-fine text-soft">
                With the digits of the label: 0 is not 0.0, and {'<1'} stays {'<1'}. Leave empty
                what the label does not say. The second field is for the second column, if there is
                one.
              </p>
              <Values nutrients={LABEL_PANELS[rule].main} {...common} texts={texts} />
              <details className="mt-3">
                <summary className="link min-h-11 content-center">What fewer labels print</summary>
                <Values nutrients={LABEL_PANELS[rule].more} {...common} texts={texts} />
              </details>
            </Part>
            {after?.(state)}
            <div className="grid gap-4">
              <div className="max-w-3xl">
                <AreaField
                  {...common}
                  name="keepReason"
                  label="If something above cannot be, keep it because"
                  hint="Only where the label really says so; it stays marked with your reason."
                  initial={text('keepReason')}
                  control={{ rows: 2 }}
                />
              </div>
              <p className="flex flex-wrap items-center gap-4">
                <Button tone="go" aria-disabled={pending || undefined}>
                  {submit}
                </Button>
                <Link href={cancelHref} className="link inline-flex min-h-11 items-center">
                  Leave it
                </Link>
              </p>
            </div>
          </div>
        );
      }}
    </FormFrame>
  );
}

/** A part of a form under its own heading. */
export function Part({
  legend,
  children,
}: {
  readonly legend: string;
  readonly children: ReactNode;
}) {
  return (
    <fieldset className="min-w-0 border-t border-line pt-3">
      <legend className="float-left mb-3 w-full font-slate text-head font-semibold">
        {legend}
      </legend>
      <div className="clear-both">{children}</div>
    </fieldset>
  );
}

interface Common {
  readonly form: string;
  readonly state: FormState;
}

function Values({
  nutrients,
  form,
  state,
  texts,
}: Common & {
  readonly nutrients: readonly Nutrient[];
  readonly texts: Readonly<Record<string, string>>;
}) {
  return (
    <div className="max-w-xl">
      <p
        aria-hidden="true"
        className="lettering grid grid-cols-[1fr_minmax(3.5rem,7rem)_minmax(3.5rem,7rem)] gap-2 border-b-[1.5px] border-ink text-fine text-soft"
      >
        <span>nutrient</span>
        <span>values</span>
        <span>second column</span>
      </p>
      {nutrients.map((nutrient) => {
        const { label, unit } = NUTRIENTS[nutrient];
        const words = `${label}, ${unit}`;
        return (
          <div
            key={nutrient}
            role="group"
            aria-label={words}
            className="grid grid-cols-[minmax(0,1fr)_minmax(3.5rem,7rem)_minmax(3.5rem,7rem)] items-center gap-2 border-b border-line py-1"
          >
            <span aria-hidden="true">
              {label} <span className="text-soft">{unit}</span>
            </span>
            <Digits
              form={form}
              state={state}
              name={`${VALUE}${nutrient}`}
              label={words}
              initial={texts[`${VALUE}${nutrient}`] ?? ''}
              quiet
            />
            <Digits
              form={form}
              state={state}
              name={`${SECOND}${nutrient}`}
              label={`${words}, second column`}
              initial={texts[`${SECOND}${nutrient}`] ?? ''}
              quiet
            />
          </div>
        );
      })}
    </div>
  );
}

function Digits(
  props: Common & {
    readonly name: string;
    readonly label: string;
    readonly initial: string;
    readonly quiet?: boolean;
  },
) {
  return <TextField {...props} control={{ inputMode: 'text', autoComplete: 'off' }} />;
}
