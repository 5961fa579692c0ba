'use client';

import type { ReactNode } from 'react';
import { ChoiceField, CONTROL, Field, TextField, type Choice } from '../../_ui/form/field';
import type { FormState } from '../../_ui/form/form-state';
import { STATE_WORDS } from '../../_ui/words';
import type { FoodVersion } from '#lib/foods/food';
import { STATES } from '#lib/foods/food-lists';
import { BASIS_WORDS } from '#lib/foods/label-column';
import { servingStandsFor } from '#lib/foods/stands-for';
import { SECOND } from '../field-names';
import { LabelColumn } from './label-column';
import { otherBasis, RULE_WORDS, type PanelRule, type Texts } from './label-texts';

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly rule: PanelRule;
  /** Another panel was chosen since the form was last answered. */
  readonly rearranged: boolean;
  /** What stands in the fields now. */
  readonly texts: Texts;
  /** What stood in them first. */
  readonly first: Texts;
  readonly version: FoodVersion;
  readonly marked: ReadonlySet<string>;
}

const CARB_BASES: readonly Choice[] = [
  { value: 'total', words: 'inside carbohydrate (US labels)' },
  { value: 'available', words: 'beside carbohydrate (EU labels)' },
];
const STATE_CHOICES: readonly Choice[] = STATES.map((value) => ({
  value,
  words: STATE_WORDS[value],
}));
const BASES: Readonly<Record<PanelRule, readonly FoodVersion['basis'][]>> = {
  us: ['serving'],
  eu: ['per100g', 'per100ml'],
  asPrinted: ['serving', 'per100g', 'per100ml'],
};
const choicesOf = (bases: readonly FoodVersion['basis'][]): Choice[] =>
  bases.map((value) => ({ value, words: BASIS_WORDS[value] }));

/** The panel in the hand, drawn in its own order, with a field where it prints a number. */
export function LabelPanel(props: Props) {
  const { form, state, rule, rearranged, texts, first, version, marked } = props;
  const column = { form, state, rule, texts, version, marked };
  const choice = { form, state: rearranged ? undefined : state };
  const own = BASES[rule];
  const bases = own.includes(version.basis) ? own : [version.basis, ...own];
  const fibre = (
    <ChoiceField
      {...choice}
      name="carbBasis"
      label="Fibre is"
      choices={CARB_BASES}
      initial={texts.carbBasis ?? 'total'}
    />
  );
  return (
    <section
      aria-label={RULE_WORDS[rule]}
      className="min-w-0 self-start border-2 border-ink bg-raised px-3 pt-2 pb-1 md:px-5"
    >
      <Serving {...choice} texts={texts} version={version} marked={marked} />
      <div className="mt-1 flex flex-wrap items-end justify-between gap-3 border-t-[10px] border-ink pt-2 pb-1">
        {bases.length === 1 ? (
          <Fixed name="basis" value={version.basis}>
            Amount {BASIS_WORDS[version.basis]}
          </Fixed>
        ) : (
          <div className="w-44">
            <ChoiceField
              {...choice}
              name="basis"
              label="Amounts"
              choices={choicesOf(bases)}
              initial={version.basis}
            />
          </div>
        )}
        {rule === 'asPrinted' && <div className="w-64">{fibre}</div>}
      </div>
      <LabelColumn {...column} />
      <SecondColumn {...props} open={hasSecond(first)} />
      <details className="border-t border-edge">
        <summary className="link min-h-11 content-center">What the values hold for</summary>
        <div className="grid gap-4 pb-3 md:grid-cols-2">
          <ChoiceField
            {...choice}
            name="state"
            label="They hold for it"
            choices={STATE_CHOICES}
            initial={texts.state ?? 'asIs'}
          />
          {rule !== 'asPrinted' && fibre}
        </div>
      </details>
    </section>
  );
}

/** The serving, in the words and digits of the pack. */
function Serving(props: {
  readonly form: string;
  readonly state: FormState | undefined;
  readonly texts: Texts;
  readonly version: FoodVersion;
  readonly marked: ReadonlySet<string>;
}) {
  const { form, state, texts, version, marked } = props;
  const range = `${form}-serving-range`;
  const decimal = { inputMode: 'decimal', enterKeyHint: 'next', autoComplete: 'off' } as const;
  const common = (name: string) => ({ form, state, name, initial: texts[name] ?? '' });
  const wrong = (name: string) => (marked.has(name) ? { 'aria-invalid': true as const } : {});
  return (
    <div className="grid grid-cols-2 items-end gap-x-3 gap-y-2 md:grid-cols-[2fr_1fr_1fr_1fr]">
      <TextField
        {...common('servingText')}
        label="Serving size, in words"
        control={{ autoComplete: 'off', enterKeyHint: 'next' }}
      />
      <Field {...common('servingG')} label="in g">
        {(wired) => (
          <input
            {...decimal}
            {...wired}
            {...wrong('servingG')}
            aria-describedby={[wired['aria-describedby'], range].filter(Boolean).join(' ')}
            className={CONTROL}
            defaultValue={texts.servingG ?? ''}
          />
        )}
      </Field>
      <TextField {...common('servingMl')} label="or ml" control={decimal} />
      <TextField
        {...common('perPack')}
        label="Servings per pack"
        control={{ ...decimal, ...wrong('perPack') }}
      />
      <p id={range} className="col-span-full min-h-5 text-fine text-soft">
        {servingStandsFor(version)}
      </p>
    </div>
  );
}

/** The same label's other column, from top to bottom as the first; folded away where there is none. */
function SecondColumn(props: Props & { readonly open: boolean }) {
  const { form, state, rule, rearranged, texts, version, marked, open } = props;
  const basis = secondBasis(version, texts);
  const bases: FoodVersion['basis'][] =
    version.basis === 'serving' ? ['per100g', 'per100ml'] : ['serving'];
  return (
    <details open={open || undefined} className="border-t border-edge">
      <summary className="link min-h-11 content-center">
        {version.basis === 'serving'
          ? 'It has a second column, per 100 g or ml'
          : 'It has a second column, per serving'}
      </summary>
      <div className="flex items-end border-t-[5px] border-ink pt-2 pb-1">
        {bases.length === 1 ? (
          <Fixed name="secondBasis" value={basis}>
            Amount {BASIS_WORDS[basis]}
          </Fixed>
        ) : (
          <div className="w-44">
            <ChoiceField
              form={form}
              state={rearranged ? undefined : state}
              name="secondBasis"
              label="Second column"
              choices={choicesOf(bases)}
              initial={basis}
            />
          </div>
        )}
      </div>
      <LabelColumn
        form={form}
        state={state}
        rule={rule}
        texts={texts}
        version={version}
        marked={marked}
        second
      />
    </details>
  );
}

function secondBasis(version: FoodVersion, texts: Texts): FoodVersion['basis'] {
  if (version.basis !== 'serving') return 'serving';
  return texts.secondBasis === 'per100ml' ? 'per100ml' : otherBasis(version.basis);
}

function Fixed(props: {
  readonly name: string;
  readonly value: string;
  readonly children: ReactNode;
}) {
  return (
    <p className="lettering font-semibold">
      <input type="hidden" name={props.name} value={props.value} />
      {props.children}
    </p>
  );
}

function hasSecond(texts: Texts): boolean {
  return Object.entries(texts).some(([name, text]) => name.startsWith(SECOND) && text !== '');
}
