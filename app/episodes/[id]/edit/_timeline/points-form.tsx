'use client';

import { useState } from 'react';
import { cutRemarks, moveCut, type CutPoints, type Edge } from '#lib/cut/cut-points';
import { lengthWords } from '#lib/cut/length-words';
import {
  frameRate,
  printTimecode,
  readTimecode,
  secondsBetween,
  type FrameRate,
  type FrameRateId,
} from '#lib/cut/timecode';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import type { FormState } from '../../../../_ui/form/form-state';
import { savePoints } from './actions';
import { pointFields, pointsText } from './field-names';
import { PointField } from './point-field';

interface Props {
  readonly episodeId: string;
  readonly rateId: FrameRateId;
  readonly points: readonly CutPoints[];
}

const ID = 'cut-points';

/** In- and out-points of every segment, typed as timecode or nudged, and saved together. */
export function PointsForm({ episodeId, rateId, points }: Props) {
  return (
    <FormFrame
      id={ID}
      action={savePoints}
      hidden={{ episodeId, rate: rateId }}
      fields={points.flatMap(({ id }) => Object.values(pointFields(id)))}
    >
      {(state, pending) => (
        <Points points={points} rate={frameRate(rateId)} state={state} pending={pending} />
      )}
    </FormFrame>
  );
}

interface PointsProps {
  readonly points: readonly CutPoints[];
  readonly rate: FrameRate;
  readonly state: FormState;
  readonly pending: boolean;
}

type Typed = Readonly<Record<string, string>>;

function Points({ points, rate, state, pending }: PointsProps) {
  // What was typed or nudged and not saved yet; all other fields show what is saved.
  const [typed, setTyped] = useState<Typed>(state.typed);
  const [told, setTold] = useState('');
  const saved = (frame: number | null) => (frame === null ? '' : printTimecode(frame, rate));
  const textOf = (one: CutPoints, edge: Edge) =>
    typed[pointFields(one.id)[edge]] ?? saved(one[edge]);
  const frameOf = (one: CutPoints, edge: Edge): number | null => {
    const text = textOf(one, edge).trim();
    // A frame past a day has the number of an earlier one.
    if (text === saved(one[edge])) return one[edge];
    const read = readTimecode(text, rate);
    return read.ok ? read.value : null;
  };
  const now = points.map((one) => ({
    ...one,
    inFrame: frameOf(one, 'inFrame'),
    outFrame: frameOf(one, 'outFrame'),
  }));
  const put = (next: readonly CutPoints[]) => {
    const texts = { ...typed };
    next.forEach((one, index) => {
      for (const edge of ['inFrame', 'outFrame'] as const) {
        if (one[edge] !== now[index]?.[edge]) texts[pointFields(one.id)[edge]] = saved(one[edge]);
      }
    });
    setTyped(texts);
  };
  const nudge = (id: string, edge: Edge, by: number) => {
    const next = moveCut(now, id, edge, by);
    put(next);
    setTold(saved(next.find((one) => one.id === id)?.[edge] ?? null));
  };
  const remarks = cutRemarks(now, rate);
  return (
    <>
      <input type="hidden" name="shown" value={state.typed.shown ?? pointsText(points)} />
      <ol>
        {points.map((one, index) => (
          <li key={one.id} className="border-b border-line py-3">
            <div
              role="group"
              aria-labelledby={`${ID}-of-${one.id}`}
              className="grid gap-x-6 gap-y-2 md:grid-cols-[minmax(0,1.3fr)_minmax(0,1fr)_minmax(0,1fr)_5.5rem]"
            >
              <p id={`${ID}-of-${one.id}`} className="font-slate text-lead font-semibold md:pt-7">
                {one.title}
              </p>
              {(['inFrame', 'outFrame'] as const).map((edge) => (
                <PointField
                  key={edge}
                  form={ID}
                  name={pointFields(one.id)[edge]}
                  label={edge === 'inFrame' ? 'Begins at' : 'Ends before'}
                  of={one.title}
                  text={textOf(one, edge)}
                  state={state}
                  second={rate.nominal}
                  onType={(text) => setTyped({ ...typed, [pointFields(one.id)[edge]]: text })}
                  onNudge={(by) => nudge(one.id, edge, by)}
                />
              ))}
              <p className="self-start text-right max-md:text-left md:pt-7">
                <span className="text-fine text-soft md:hidden">length </span>
                {lengthWords(secondsBetween(now[index]?.inFrame, now[index]?.outFrame, rate))}
              </p>
            </div>
          </li>
        ))}
      </ol>
      <p role="status" className="unseen">
        {told}
      </p>
      {remarks.length > 0 && (
        <ul className="mt-3">
          {remarks.map(({ id, code, message, mend }) => (
            <li key={`${id} ${code} ${message}`} className="mb-1.5">
              {message}{' '}
              {mend && (
                <Button
                  type="button"
                  tone="bare"
                  onClick={() =>
                    put(
                      now.map((one) =>
                        one.id === mend.change.id ? { ...one, ...mend.change } : one,
                      ),
                    )
                  }
                >
                  {mend.words}
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
      <div className="mt-4 flex flex-wrap gap-3">
        <Button tone="go" aria-disabled={pending || undefined}>
          Save the times
        </Button>
        {Object.keys(typed).length > 0 && (
          <Button type="button" onClick={() => setTyped({})}>
            Leave as they were
          </Button>
        )}
      </div>
    </>
  );
}
