import type { ReactNode } from 'react';
import { TextField, TickField } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import { ruleFields, stepFields, type MethodOffer } from '../method-fields';

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly offer: MethodOffer;
}

const DECIMAL = { inputMode: 'decimal', autoComplete: 'off' } as const;
const EDGES = {
  hand: 'border-l-[6px] border-l-hand pl-3',
  self: 'border-l-[6px] border-double border-l-self pl-3',
} as const;

/** What was read of a method: its steps with the words each was read from, and the rules that add to them. */
export function MethodSteps({ form, state, offer }: Props) {
  return (
    <>
      <Heading>Steps that were read</Heading>
      <p className="-mt-3 text-fine text-soft">
        Times are in minutes. Change what you know better, and take the tick off what is no step.
      </p>
      <ol className="border-t border-line">
        {offer.steps.map((step) => (
          <li key={step.key} className="border-b border-line py-3">
            <StepFields form={form} state={state} unit={offer.unit} step={step} />
          </li>
        ))}
      </ol>
      {(offer.rules.length > 0 || offer.shown.length > 0) && <Heading>Added by rule</Heading>}
      {offer.rules.length > 0 && (
        <ul className="border-t border-line">
          {offer.rules.map((rule) => (
            <li key={rule.name} className="border-b border-line py-3">
              <RuleFields form={form} state={state} rule={rule} />
            </li>
          ))}
        </ul>
      )}
      {offer.shown.length > 0 && (
        <ul>
          {offer.shown.map(({ title, words, basis }) => (
            <li key={title} className="mb-2">
              <span className="font-semibold">{title}: nothing is added.</span> {words}{' '}
              <span className="text-fine text-soft">{basis}</span>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Heading({ children }: { readonly children: ReactNode }) {
  return <h5 className="font-slate text-head font-semibold">{children}</h5>;
}

function StepFields({
  form,
  state,
  unit,
  step,
}: Pick<Props, 'form' | 'state'> & {
  readonly unit: MethodOffer['unit'];
  readonly step: MethodOffer['steps'][number];
}) {
  const field = stepFields(step.key);
  const common = { form, state, control: DECIMAL } as const;
  return (
    <fieldset className={`min-w-0 ${step.hands ? EDGES.hand : EDGES.self}`}>
      <legend className="unseen">{step.title}</legend>
      <div className="grid items-start gap-x-6 gap-y-2 lg:grid-cols-[minmax(0,1fr)_26rem]">
        <div className="min-w-0">
          <TickField form={form} state={state} name={field.tick} label={step.title} />
          <p className="text-fine wrap-anywhere text-soft">
            {step.found.map(({ what, from }, index) => (
              <span key={`${what} ${index}`}>
                {index > 0 && ' · '}
                {what}
                {from !== null && <> (“{from}”)</>}
              </span>
            ))}
          </p>
          <p className="text-fine wrap-anywhere text-soft">From: “{step.sentence}”</p>
          {step.contact !== null && (
            <TickField form={form} state={state} name={field.contact} label={step.contact} />
          )}
          {step.remark !== '' && <p className="text-fine font-semibold">{step.remark}</p>}
        </div>
        <div className="grid grid-cols-2 items-start gap-2 min-[360px]:grid-cols-4">
          <TextField {...common} name={field.low} label="Shortest" />
          <TextField {...common} name={field.usual} label="Usual" />
          <TextField {...common} name={field.high} label="Longest" />
          {step.inOven && <TextField {...common} name={field.oven} label={`Oven, °${unit}`} />}
        </div>
      </div>
    </fieldset>
  );
}

function RuleFields({
  form,
  state,
  rule,
}: Pick<Props, 'form' | 'state'> & { readonly rule: MethodOffer['rules'][number] }) {
  const field = ruleFields(rule.name);
  return (
    <fieldset className="grid min-w-0 items-start gap-x-6 gap-y-2 lg:grid-cols-[minmax(0,1fr)_26rem]">
      <legend className="unseen">{rule.title}</legend>
      <div className="min-w-0">
        <TickField form={form} state={state} name={field.tick} label={rule.title} />
        <p className="text-fine text-soft">
          {rule.words} {rule.basis}
        </p>
        {rule.adds.length > 0 && (
          <p className="text-fine wrap-anywhere">Adds: {rule.adds.join('; ')}.</p>
        )}
      </div>
      <div className="grid grid-cols-2 gap-2 min-[360px]:grid-cols-4">
        <TextField
          form={form}
          state={state}
          control={DECIMAL}
          name={field.minutes}
          label="Minutes"
        />
      </div>
    </fieldset>
  );
}
