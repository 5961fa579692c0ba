import { fieldId, type FormState } from '../../../_ui/form/form-state';
import type { WeighedOf } from '#lib/episode/typed-weighing';
import { scaleGramsText } from '#lib/units/scale-grams';
import { HIT, ScaleField } from './weigh-field';

/** A reading that a new one is held against. */
interface HeldReading {
  readonly id: string;
  readonly mg: number;
  /** Of what, and when. */
  readonly words: string;
}

/** What is known before anything is typed. */
export interface Held {
  /** What stands on the scale already, for a running total; null where nobody knows. */
  readonly onScale: (HeldReading & { readonly running: boolean }) | null;
  /** What was read the first time, and waits for the second. */
  readonly waiting: HeldReading | null;
  /** The container that came off last. */
  readonly containerMg: number | null;
}

interface Props {
  readonly form: string;
  readonly state: FormState;
  readonly of: WeighedOf;
  readonly held: Held;
}

/** How it is weighed. What a way needs beside the number on the scale shows where the way is chosen. */
export function WeighWays({ form, state, of, held }: Props) {
  const { onScale, waiting } = held;
  // A total is proposed only once one runs: on a scale set to 0 it would be a wrong number.
  const first = waiting ? 'difference' : onScale?.running ? 'total' : 'direct';
  const chosen = state.typed.method ?? first;
  const taken = of === 'raw' || of === 'cooked';
  const ways = [
    { value: 'direct', words: 'Straight, less its container' },
    ...(onScale ? [{ value: 'total', words: 'On top of what is on the scale' }] : []),
    { value: 'difference', words: taken ? 'Before and after it is taken' : 'Empty and full' },
  ];
  return (
    <>
      <fieldset>
        <legend className="font-semibold">How</legend>
        {ways.map(({ value, words }) => (
          <label key={value} className={`${HIT} border-b border-line has-checked:font-semibold`}>
            <input
              key={chosen}
              type="radio"
              name="method"
              value={value}
              defaultChecked={value === chosen}
              className="size-5 shrink-0 accent-ink"
            />
            {words}
          </label>
        ))}
      </fieldset>
      <Container form={form} state={state} containerMg={held.containerMg} />
      {onScale && (
        <p className="hidden group-has-[[value=total]:checked]/ways:block">
          {grams(onScale.mg)} on the scale: {onScale.words}. Put this on top, do not set the scale
          to 0, and write what it shows.
          <input type="hidden" name="onScaleId" value={onScale.id} />
        </p>
      )}
      <div className="hidden gap-2 group-has-[[value=difference]:checked]/ways:grid">
        {waiting ? (
          <p>
            {grams(waiting.mg)} {taken ? 'before' : 'empty'}: {waiting.words}. Write what it shows{' '}
            {taken ? 'now that some is taken' : 'now with what is in it'}.
            <input type="hidden" name="waitingId" value={waiting.id} />
          </p>
        ) : (
          <ScaleField
            form={form}
            state={state}
            name="after"
            label={taken ? 'After it was taken, g' : 'Empty, g'}
            hint={
              taken
                ? 'Jar, pan or plate with what is left in it. Leave this empty if you have not taken it yet: what is on the scale waits.'
                : 'Leave this empty if it is the empty one that is on the scale: it waits.'
            }
          />
        )}
      </div>
    </>
  );
}

/** What comes off a straight reading: nothing, the container used last, or another. */
function Container({
  form,
  state,
  containerMg,
}: Pick<Props, 'form' | 'state'> & { readonly containerMg: number | null }) {
  const again = containerMg === null ? null : String(containerMg);
  return (
    <div className="hidden gap-2 group-has-[[value=direct]:checked]/ways:grid">
      {again && (
        <label className={HIT} htmlFor={fieldId(form, 'tareAgain')}>
          <input
            key={state.attempt}
            id={fieldId(form, 'tareAgain')}
            type="checkbox"
            name="tareAgain"
            value={again}
            defaultChecked={state.typed.tareAgain === again}
            className="size-5 shrink-0 accent-ink"
          />
          {grams(Number(again))} of the container used last come off
        </label>
      )}
      <ScaleField
        form={form}
        state={state}
        name="tare"
        label="Container, g"
        hint="Empty for none, or where the scale was set to 0 with it."
      />
    </div>
  );
}

const grams = (mg: number) => `${scaleGramsText(mg)} g`;
