import { useState, type SubmitEvent } from 'react';
import { checkDegrees } from '../../../../../_forms/degrees';
import { Button } from '../../../../../_ui/button';
import { CONTROL, Field } from '../../../../../_ui/form/field';
import { UNTOUCHED } from '../../../../../_ui/form/form-state';
import type { Episode } from '#lib/episode/schema';
import { CORE_MILLI_C } from '#lib/episode/step-limits';
import type { DayReading } from '#lib/shoot/fold-day';
import { readingWords } from '#lib/shoot/inside-least';
import type { LiveRow } from '../live-row';

interface Props {
  readonly inside: NonNullable<LiveRow['inside']>;
  readonly region: Episode['region'];
  readonly readings: readonly DayReading[];
  readonly ready: boolean;
  readonly clock: (at: string) => string;
  readonly onRead: (milliC: number) => Promise<void>;
}

/** The least inside temperature of the step at hand, what was read, and whether that is enough. */
export function InsideForm({ inside, region, readings, ready, clock, onRead }: Props) {
  const [text, setText] = useState('');
  const [fault, setFault] = useState('');
  const unit = region === 'US' ? 'F' : 'C';
  const keep = async (event: SubmitEvent) => {
    event.preventDefault();
    const { milliC, wrong } = checkDegrees(text, unit, CORE_MILLI_C);
    setFault(milliC === null ? 'Write the degrees that you read, as 74.' : (wrong ?? ''));
    if (milliC === null || wrong !== null) return;
    await onRead(milliC);
    setText('');
  };
  const problems = fault === '' ? [] : [{ path: 'inside', code: 'invalid', message: fault }];
  const last = readings.at(-1);
  const said = last && readingWords(inside, last.milliC, region);
  return (
    <form
      aria-label="Inside temperature"
      className="mt-4 grid gap-3 border-t border-line pt-3"
      onSubmit={(event) => void keep(event)}
    >
      <p className="text-lead font-semibold">{inside.words}</p>
      {inside.caution !== null && <p className="text-fine text-soft">{inside.caution}</p>}
      <p role="status" className={`text-lead ${said?.reached === false ? 'text-hand' : ''}`}>
        {last && said && (
          <b className="font-semibold">
            {clock(last.at)}: {said.words}
          </b>
        )}
      </p>
      <Field
        form="inside"
        name="inside"
        label={`Read inside, °${unit}`}
        state={{ ...UNTOUCHED, problems }}
      >
        {(wired) => (
          <input
            {...wired}
            inputMode="decimal"
            autoComplete="off"
            className={`${CONTROL} min-h-14 text-step`}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
        )}
      </Field>
      <Button size="day" disabled={!ready}>
        Keep the reading
      </Button>
    </form>
  );
}
