'use client';

import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { TextField, TickField } from '../../../../_ui/form/field';
import type { FilmingDay } from '#lib/episode/day-schema';
import { clockTyped } from '#lib/units/read-typed';
import { saveDay } from '../actions';
import { FILM } from '../field-names';

interface Props {
  readonly episodeId: string;
  readonly day: FilmingDay;
  readonly rev: number;
  /** All segments of the episode, in viewing order. */
  readonly segments: readonly { readonly id: string; readonly title: string }[];
}

const KINDS = [
  {
    value: 'asLived',
    words: 'As lived',
    hint: 'meals in viewing order, as far apart as you say below',
  },
  { value: 'packed', words: 'Packed', hint: 'any order that food and story allow, shortest day' },
] as const;

/** What the filming day is: as lived or packed, date, start, wrap, and what is filmed. */
export function DayForm({ episodeId, day, rev, segments }: Props) {
  const form = 'day';
  const summary = `Change the day: ${day.kind === 'asLived' ? 'packed' : 'as lived'}, date, start, wrap, what is filmed`;
  const filmed = new Set(day.segments.map(({ segmentId }) => segmentId));
  return (
    <FormFrame
      id={form}
      action={saveDay}
      fields={['date', 'kind', 'start', 'wrapBy', 'mealGap', 'lightMargin', 'outfit']}
      hidden={{ episodeId, dayId: day.id, rev }}
    >
      {(state, pending) => (
        <details open={state.problems.length > 0}>
          <summary className="link min-h-14 content-center">{summary}</summary>
          <div className="grid gap-x-8 gap-y-4 border-[1.5px] border-ink bg-raised p-4 md:grid-cols-2">
            <fieldset className="md:col-span-2">
              <legend className="mb-1 font-semibold">The day is</legend>
              <div className="grid gap-x-8 md:grid-cols-2">
                {KINDS.map(({ value, words, hint }) => (
                  <label
                    key={value}
                    htmlFor={`${form}-kind-${value}`}
                    className="grid min-h-14 grid-cols-[auto_1fr] content-center items-center gap-x-3"
                  >
                    <input
                      id={`${form}-kind-${value}`}
                      type="radio"
                      name="kind"
                      value={value}
                      defaultChecked={(state.typed.kind ?? day.kind) === value}
                      className="size-5 shrink-0 accent-ink"
                    />
                    <b className="font-semibold">{words}</b>
                    <span className="col-start-2 text-fine text-soft">{hint}</span>
                  </label>
                ))}
              </div>
            </fieldset>
            <div className="grid grid-cols-2 content-start items-end gap-4">
              <TextField
                form={form}
                name="date"
                label="Filming date"
                state={state}
                initial={day.date}
                control={{ type: 'date', required: true }}
              />
              <TextField
                form={form}
                name="start"
                label="Start"
                state={state}
                initial={clockTyped(day.startMin)}
                control={{ autoComplete: 'off' }}
              />
              <TextField
                form={form}
                name="wrapBy"
                label="Wrap by"
                hint="Empty: no limit. After midnight 24:30."
                state={state}
                initial={day.wrapByMin === null ? '' : clockTyped(day.wrapByMin)}
                control={{ autoComplete: 'off' }}
              />
              <TextField
                form={form}
                name="mealGap"
                label="Minutes between meals"
                hint="From the start of one to the next."
                state={state}
                initial={String(day.mealGapMin)}
                control={{ inputMode: 'numeric', autoComplete: 'off' }}
              />
              <TextField
                form={form}
                name="lightMargin"
                label="Minutes kept from sunrise and sunset"
                hint="For what needs daylight."
                state={state}
                initial={String(day.lightMarginMin)}
                control={{ inputMode: 'numeric', autoComplete: 'off' }}
              />
              <TextField
                form={form}
                name="outfit"
                label="Outfit"
                hint="So that a pickup on another day matches."
                state={state}
                initial={day.outfit}
                control={{ autoComplete: 'off' }}
              />
            </div>
            <fieldset>
              <legend className="mb-1 font-semibold">Filmed that day</legend>
              {segments.map(({ id, title }) => (
                <TickField
                  key={id}
                  form={form}
                  name={`${FILM}${id}`}
                  label={title}
                  state={state}
                  initial={filmed.has(id)}
                />
              ))}
              {segments.length === 0 && (
                <p className="text-soft">The episode has no segments yet.</p>
              )}
            </fieldset>
            <div className="md:col-span-2">
              <Button tone="go" aria-disabled={pending || undefined}>
                Save the day and plan it again
              </Button>
            </div>
          </div>
        </details>
      )}
    </FormFrame>
  );
}
