'use client';

import Link from 'next/link';
import { useRef, useState, useSyncExternalStore, type ReactNode } from 'react';
import { FormFrame } from '../../_forms/form-frame';
import type { FormAction } from '../../_forms/parse-then-act';
import { Button } from '../../_ui/button';
import { AreaField } from '../../_ui/form/field';
import { errorsAt, type FormState } from '../../_ui/form/form-state';
import { checkLabel } from '#lib/foods/check-label';
import { checkServingsInPacks, type PackAmounts } from '#lib/foods/check-servings';
import { ROUNDING_RULES } from '#lib/foods/food-lists';
import { panelNutrients } from '#lib/foods/label-panel';
import { likelySlips } from '#lib/foods/likely-slip';
import { typedPack } from '#lib/foods/typed-label';
import { labelField, SECOND, VALUE } from '../field-names';
import { PhotoFields } from '../foods/[foodId]/photo/_components/photo-fields';
import { FILE_FIELDS } from '../foods/[foodId]/photo/file-fields';
import { LabelPanel } from './label-panel';
import { LabelRemarks, RemarksLine } from './label-remarks';
import { REFUSE_FIELDS, RefuseFields } from './refuse-fields';
import { emptyLabel, versionTyped, type PanelRule, type Texts } from './label-texts';
import { RuleChoice } from './rule-choice';
import { useEnterMovesOn } from './use-enter-moves-on';
import { useTypedTexts } from './use-typed-texts';

interface Props {
  readonly id: string;
  readonly action: FormAction;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly rule: PanelRule;
  readonly texts: Texts;
  readonly submit: string;
  readonly cancelHref: string;
  /** Packs of the food that are known already. */
  readonly packs?: readonly PackAmounts[];
  /** What is asked before the label itself: the food's name and place, where it is a new one. */
  readonly before?: (state: FormState) => ReactNode;
  /** What is asked after it: allergens, pack and price. */
  readonly after?: (state: FormState) => ReactNode;
  readonly moreFields?: readonly string[];
}

const OWN_FIELDS = [
  'servingText',
  'servingG',
  'servingMl',
  'perPack',
  'basis',
  'secondBasis',
  'carbBasis',
  'state',
  'keepReason',
  ...REFUSE_FIELDS,
  ...FILE_FIELDS,
];

/** A package label as it is printed: which panel, the serving, then the values in the order of the panel. */
export function LabelForm(props: Props) {
  const { id, action, hidden, moreFields = [] } = props;
  const nutrients = new Set(ROUNDING_RULES.flatMap((rule) => panelNutrients(rule)));
  const fields = [
    ...moreFields,
    ...OWN_FIELDS,
    ...[...nutrients].flatMap((name) => [`${VALUE}${name}`, `${SECOND}${name}`]),
  ];
  return (
    <FormFrame id={id} action={action} fields={fields} hidden={hidden}>
      {(state, pending) => <LabelFields {...props} state={state} pending={pending} />}
    </FormFrame>
  );
}

function LabelFields(props: Props & { readonly state: FormState; readonly pending: boolean }) {
  const { id, state, pending, submit, cancelHref, packs = [], before, after } = props;
  const sent = readRule(state.typed.rule) ?? props.rule;
  const [chosen, choose] = useState<PanelRule | null>(null);
  const rule = chosen ?? sent;
  const [first] = useState<Texts>({ ...props.texts, ...state.typed });
  const here = useRef<HTMLDivElement>(null);
  const scripted = useSyncExternalStore(never, yes, no);
  const typed = useTypedTexts(here, first, rule);
  useEnterMovesOn(here);
  const settled = versionTyped(rule, typed.settled);
  const known = [...packs, packIn(typed.settled)].filter(holdsSomething);
  const inPack = (version: typeof settled) => checkServingsInPacks(version, known);
  const problems = [...checkLabel(settled), ...inPack(settled)];
  const slips = problems.length === 0 ? [] : likelySlips(settled, inPack);
  const marked = new Set(problems.map(({ path }) => labelField(path)));
  // After a change of panel its own defaults stand; what was typed into the same lines stays.
  const texts = rule === sent ? typed.now : { ...typed.now, ...emptyLabel(rule) };
  return (
    <div ref={here} className="grid gap-6">
      {/* The first button is the one that Enter presses before any script has come. */}
      <button type="submit" tabIndex={-1} aria-hidden="true" className="unseen" />
      <input type="hidden" name="rule" value={rule} />
      <div>
        <RuleChoice rule={rule} onChoose={choose} />
        {scripted && (
          <p className="text-fine text-soft print:hidden">
            Enter goes to the next field; the last one sends. Type as printed, {'<1'} too; leave
            empty what the label does not say.
          </p>
        )}
      </div>
      {before?.(state)}
      <div className="grid gap-x-10 gap-y-6 lg:grid-cols-[minmax(0,42rem)_minmax(0,1fr)]">
        <div className="min-w-0">
          <LabelPanel
            key={rule}
            form={id}
            state={state}
            rule={rule}
            rearranged={rule !== sent}
            texts={texts}
            first={first}
            version={versionTyped(rule, texts)}
            marked={marked}
          />
          <RemarksLine problems={problems} slips={slips} />
        </div>
        <LabelRemarks version={settled} problems={problems} slips={slips} />
      </div>
      {after?.(state)}
      <details open={refused(state, first) || undefined} className="max-w-3xl">
        <summary className="link min-h-11 content-center">Peel and trim, bone, shell</summary>
        <RefuseFields
          form={id}
          state={state}
          refuse={{
            percent: first.refusePercent ?? '',
            text: first.refuseText ?? '',
            inValues: first.refuseInValues === 'on',
          }}
        />
      </details>
      <details open={hasFault(state, FILE_FIELDS) || undefined} className="max-w-3xl">
        <summary className="link min-h-11 content-center">Attach a photo of the panel</summary>
        <PhotoFields form={id} state={state} />
      </details>
      <details open={state.problems.length > 0 || undefined} className="max-w-3xl">
        <summary className="link min-h-11 content-center">
          The label says what cannot be: keep it with a reason
        </summary>
        <AreaField
          form={id}
          state={state}
          name="keepReason"
          label="Keep it because"
          hint="It stays marked with your reason."
          initial={first.keepReason ?? ''}
          control={{ rows: 2 }}
        />
      </details>
      <p className="flex flex-wrap items-center gap-4 print:hidden">
        <Button tone="go" aria-disabled={pending || undefined}>
          {submit}
        </Button>
        <Link href={cancelHref} className="link inline-flex min-h-11 items-center">
          Leave it
        </Link>
      </p>
    </div>
  );
}

/** Whether there is something to see of peel and trim, or to put right. */
function refused(state: FormState, first: Texts): boolean {
  return REFUSE_FIELDS.some((name) => first[name] || errorsAt(state, name).length > 0);
}

const hasFault = (state: FormState, fields: readonly string[]) =>
  fields.some((name) => errorsAt(state, name).length > 0);

const never = () => () => undefined;
const yes = () => true;
const no = () => false;

function readRule(text: string | undefined): PanelRule | null {
  return ROUNDING_RULES.find((rule) => rule === text) ?? null;
}

function packIn(texts: Texts): PackAmounts {
  return typedPack({
    grams: texts.packG ?? '',
    millilitres: texts.packMl ?? '',
    drained: texts.packDrained ?? '',
  });
}

const holdsSomething = ({ netMg, netMl, drainedMg }: PackAmounts) =>
  netMg !== null || netMl !== null || drainedMg !== null;
