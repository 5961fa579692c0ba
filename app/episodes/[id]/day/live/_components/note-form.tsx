import { useState, type SubmitEvent } from 'react';
import { Button } from '../../../../../_ui/button';
import { CONTROL, Field } from '../../../../../_ui/form/field';
import { UNTOUCHED } from '../../../../../_ui/form/form-state';
import { NOTE_MAX, PICKUP_MIN, type RowRef } from '#lib/shoot/day-log';
import type { LiveRow } from '../live-row';

/** Minutes that something to get later may take. */
const MINUTES = [2, 5, 10, 15, 30] as const;

interface Props {
  readonly rows: readonly LiveRow[];
  readonly ready: boolean;
  readonly onNote: (text: string, ref: RowRef | null) => Promise<void>;
  /** The words are of something to get later. */
  readonly onPickup: (text: string, ref: RowRef | null, minutes: number) => Promise<void>;
}

/** A note, or something to get later, about a step or the day. The text stays until it is kept. */
export function NoteForm({ rows, ready, onNote, onPickup }: Props) {
  const [text, setText] = useState('');
  const [about, setAbout] = useState('');
  const [fault, setFault] = useState('');
  const [minutes, setMinutes] = useState(PICKUP_MIN);
  const keep = async (kept: Props['onNote']) => {
    const found = faultOf(text);
    setFault(found);
    if (found !== '') return;
    await kept(text, rows.find(({ key }) => key === about)?.ref ?? null);
    setText('');
    setAbout('');
  };
  const problems = fault === '' ? [] : [{ path: 'text', code: 'invalid', message: fault }];
  const field = { form: 'note', state: { ...UNTOUCHED, problems } };
  return (
    <form
      aria-label="Note"
      className="grid gap-3"
      onSubmit={(event: SubmitEvent) => {
        event.preventDefault();
        void keep(onNote);
      }}
    >
      <Field {...field} name="text" label="Note" hint={`Up to ${NOTE_MAX} characters.`}>
        {(wired) => (
          <textarea
            {...wired}
            rows={3}
            className={CONTROL}
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
        )}
      </Field>
      <Field {...field} name="about" label="About">
        {(wired) => (
          <select
            {...wired}
            className={`${CONTROL} min-h-14`}
            value={about}
            onChange={(event) => setAbout(event.target.value)}
          >
            <option value="">the day</option>
            {rows.map(({ key, title }) => (
              <option key={key} value={key}>
                {title}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Button size="day" disabled={!ready}>
        Keep the note
      </Button>
      <label className="grid gap-1 font-semibold">
        To get later takes
        <select
          className={`${CONTROL} min-h-14`}
          value={minutes}
          onChange={(event) => setMinutes(Number(event.target.value))}
        >
          {MINUTES.map((each) => (
            <option key={each} value={each}>
              {each} min
            </option>
          ))}
        </select>
      </label>
      <Button
        type="button"
        size="day"
        disabled={!ready}
        onClick={() => void keep((kept, ref) => onPickup(kept, ref, minutes))}
      >
        Get it later
      </Button>
    </form>
  );
}

function faultOf(text: string): string {
  if (text.trim() === '') return 'Write what is to be kept.';
  const { length } = text.trim();
  return length > NOTE_MAX
    ? `A note has at most ${NOTE_MAX} characters, this one has ${length}: make two of it.`
    : '';
}
