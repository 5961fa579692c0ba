import { errorsAt, fieldId, type FormState } from '../../../_ui/form/form-state';
import { PARTS, WITH } from '../weigh-field-names';
import { HIT, ScaleField } from './weigh-field';

/** An ingredient that may share a reading, with the part that is proposed. */
interface Sharer {
  readonly id: string;
  readonly text: string;
  /** Its grams, as weighed or planned; empty where they are not known. */
  readonly parts: string;
}

export interface Sharing {
  readonly own: Sharer;
  /** The other ingredients of the dish. */
  readonly others: readonly Sharer[];
  /** Both. */
  readonly all: readonly Sharer[];
  /** Whether it stands open: what is left in a pan is often of several. */
  readonly words: string;
}

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly sharing: Sharing;
}

/** One reading for several ingredients: which, and in what proportion. Their grams are proposed. */
export function WeighShares({ form, state, sharing }: Props) {
  const { own, others } = sharing;
  if (others.length === 0) return null;
  const used =
    others.some(({ id }) => state.typed[`${WITH}${id}`] === 'on') ||
    sharing.all.some(({ id }) => errorsAt(state, `${PARTS}${id}`).length > 0);
  return (
    <details open={used}>
      <summary className="link min-h-11 content-center max-md:min-h-14">{sharing.words}</summary>
      <p className="text-fine text-soft">
        Divided in the proportion of these parts. Their grams are proposed; any numbers will do, as
        1 and 3.
      </p>
      <div className="grid grid-cols-[1fr_7rem] items-center gap-x-4 border-b border-line py-1">
        <span className="font-semibold">{own.text}</span>
        <PartField form={form} state={state} of={own} />
      </div>
      {others.map((each) => (
        <div
          key={each.id}
          className="grid grid-cols-[1fr_7rem] items-center gap-x-4 border-b border-line py-1"
        >
          <label className={HIT} htmlFor={fieldId(form, `${WITH}${each.id}`)}>
            <input
              key={state.attempt}
              id={fieldId(form, `${WITH}${each.id}`)}
              type="checkbox"
              name={`${WITH}${each.id}`}
              defaultChecked={state.typed[`${WITH}${each.id}`] === 'on'}
              className="size-5 shrink-0 accent-ink"
            />
            {each.text}
          </label>
          <PartField form={form} state={state} of={each} />
        </div>
      ))}
    </details>
  );
}

function PartField({ form, state, of }: Pick<Props, 'form' | 'state'> & { readonly of: Sharer }) {
  return (
    <ScaleField
      form={form}
      state={state}
      name={`${PARTS}${of.id}`}
      label={`Part of ${of.text}`}
      initial={of.parts}
      quiet
    />
  );
}
