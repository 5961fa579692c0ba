'use client';

import { useRef } from 'react';
import { CONTROL } from '../../_ui/form/field';
import { errorsAt, fieldId, type FormState } from '../../_ui/form/form-state';
import { panelDepth, panelWords } from '#lib/foods/label-panel';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { standsFor } from '#lib/foods/stands-for';
import type { PanelRule } from './label-texts';

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly rule: PanelRule;
  readonly nutrient: Nutrient;
  readonly name: string;
  /** Said after the nutrient to those who cannot see the column it stands in. */
  readonly column: string;
  readonly text: string;
  /** What this and the other column allow together; null where there is no other. */
  readonly together: string | null;
  /** A remark names this number. */
  readonly marked: boolean;
}

const INDENTS = ['', 'pl-3 md:pl-5', 'pl-6 md:pl-10'];
const LINE =
  'group grid grid-cols-[minmax(0,1fr)_6.25rem_2.25rem] items-center gap-x-1.5 border-t py-1 md:grid-cols-[minmax(0,1fr)_2rem_6.5rem_2.5rem_16.5rem]';

/** One line of a panel: its words, its field, and beside it what the number stands for. */
export function ValueLine(props: Props) {
  const { form, state, rule, nutrient, name, column, text, together, marked } = props;
  const input = useRef<HTMLInputElement>(null);
  const id = fieldId(form, name);
  const { unit } = NUTRIENTS[nutrient];
  const words = panelWords(rule, nutrient);
  const depth = panelDepth(rule, nutrient);
  const large = nutrient === 'energyKcal' && rule === 'us';
  const stands = standsFor(rule, nutrient, text);
  const errors = errorsAt(state, name);
  const wrong = errors.length > 0 || marked || stands.kind === 'unread';
  const weight = depth === 0 ? 'font-semibold' : '';
  return (
    <div className={`${LINE} ${large ? 'border-b-[5px] border-ink' : 'border-edge'}`}>
      <label
        htmlFor={id}
        className={`${INDENTS[depth] ?? ''} ${large ? 'font-slate text-title font-semibold' : weight}`}
      >
        {words}
        <span className="unseen">{`, ${unit}, ${column}`}</span>
      </label>
      <button
        type="button"
        tabIndex={-1}
        aria-label={`Less than, for ${words}`}
        className="invisible relative z-[1] min-h-6 border-[1.5px] border-edge bg-paper font-slate text-lead leading-none font-semibold group-focus-within:visible max-md:col-start-1 max-md:row-start-2 max-md:w-9 md:min-h-11"
        onPointerDown={(event) => event.preventDefault()}
        onClick={() => input.current && toggleLess(input.current)}
      >
        {'<'}
      </button>
      <input
        ref={input}
        id={id}
        name={name}
        type="text"
        inputMode="decimal"
        enterKeyHint="next"
        autoComplete="off"
        aria-describedby={errors.length > 0 ? `${id}-range ${id}-error` : `${id}-range`}
        aria-invalid={wrong || undefined}
        className={`${CONTROL} scroll-mb-24 text-right ${large ? 'min-h-14 font-slate text-title font-semibold' : ''}`}
        defaultValue={text}
      />
      <span aria-hidden="true" className="text-soft">
        {unit}
      </span>
      <p
        id={`${id}-range`}
        className={`min-h-6 text-right text-fine max-md:col-span-full max-md:row-start-2 max-md:pl-10 md:min-h-5 md:pl-2 md:text-left ${stands.kind === 'range' || stands.kind === 'blank' ? 'text-soft' : 'font-semibold text-hand'}`}
      >
        <span className={stands.kind === 'blank' ? 'opacity-0 group-focus-within:opacity-100' : ''}>
          {stands.words}
        </span>
        {marked && stands.kind === 'range' && <b className="text-hand"> · remark</b>}
        {together && <span className="md:block"> {together}</span>}
      </p>
      {errors.length > 0 && (
        <p id={`${id}-error`} className="col-span-full text-fine font-semibold text-hand">
          {errors.map((error) => error.message).join(' ')}
        </p>
      )}
    </div>
  );
}

/** Puts "<" before what is typed, or takes it away: keypads for numbers have none. */
function toggleLess(input: HTMLInputElement): void {
  const { value } = input;
  input.value = value.startsWith('<') ? value.slice(1) : `<${value}`;
  input.dispatchEvent(new Event('input', { bubbles: true }));
  input.focus();
}
