'use client';

import type { FormState } from '../../_ui/form/form-state';
import type { FoodVersion } from '#lib/foods/food';
import { BASIS_WORDS } from '#lib/foods/label-column';
import { LABEL_PANELS } from '#lib/foods/label-panel';
import type { Nutrient } from '#lib/foods/nutrients';
import { togetherWords } from '#lib/foods/together-words';
import { labelField, SECOND, VALUE } from '../field-names';
import type { PanelRule, Texts } from './label-texts';
import { ValueLine } from './value-line';

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly rule: PanelRule;
  readonly texts: Texts;
  /** The label as it stands in the fields now. */
  readonly version: FoodVersion;
  readonly second?: boolean;
  /** Fields that a remark names. */
  readonly marked: ReadonlySet<string>;
}

/** One column of a panel, from top to bottom as it is printed. */
export function LabelColumn(props: Props) {
  const { form, state, rule, texts, version, second = false, marked } = props;
  const prefix = second ? SECOND : VALUE;
  const path = second ? 'secondColumn.values' : 'values';
  const basis = second ? version.secondColumn?.basis : version.basis;
  const line = (nutrient: Nutrient) => {
    const name = labelField(`${path}.${nutrient}`);
    return (
      <ValueLine
        key={nutrient}
        form={form}
        state={state}
        rule={rule}
        nutrient={nutrient}
        name={name}
        column={basis ? BASIS_WORDS[basis] : 'second column'}
        text={texts[name] ?? ''}
        together={second ? togetherWords(version, nutrient) : null}
        marked={marked.has(name)}
      />
    );
  };
  const more = LABEL_PANELS[rule].more;
  const stated = more.some((nutrient) => (texts[`${prefix}${nutrient}`] ?? '') !== '');
  return (
    <>
      {LABEL_PANELS[rule].main.map(line)}
      <details open={stated || undefined} className="border-t-[5px] border-ink">
        <summary className="link min-h-11 content-center">
          Vitamins, minerals, and what fewer panels print
        </summary>
        {more.map(line)}
      </details>
    </>
  );
}
