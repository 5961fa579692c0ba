import type { SubmitEvent } from 'react';
import { Button, buttonClass } from '../../../../../_ui/button';
import { CONTROL, Field } from '../../../../../_ui/form/field';
import { UNTOUCHED } from '../../../../../_ui/form/form-state';
import type { DayDish, DishesOnDay } from '#lib/overview/dishes-on-day';
import { scaleGramsText } from '#lib/units/scale-grams';
import { Keypad } from './keypad';
import { ScaleChoice } from './scale-choice';
import { ScaleWays, wayInWords } from './scale-ways';
import type { Scale } from './use-scale';

interface Props {
  readonly scale: Scale;
  readonly dishes: readonly DayDish[];
  readonly scales: DishesOnDay['scales'];
  readonly ready: boolean;
  /** Where the photo is whose number is being typed. */
  readonly srcOf: (sha256: string) => string;
}

/** One reading: what is on the scale, what it shows, and the keys to type that with one thumb. */
export function ScaleForm({ scale, dishes, scales, ready, srcOf }: Props) {
  const { draft, display, on, fault } = scale;
  const problems = fault === '' ? [] : [{ path: 'shows', code: 'invalid', message: fault }];
  return (
    <form
      aria-label="Weigh"
      noValidate
      className="grid gap-4"
      onSubmit={(event: SubmitEvent) => {
        event.preventDefault();
        void scale.keep(false);
      }}
    >
      {display ? (
        <div className="grid gap-2">
          <p className="text-lead font-semibold">{scale.what}</p>
          {/* eslint-disable-next-line @next/next/no-img-element -- the person's own photo, of this program */}
          <img
            src={srcOf(display.sha256)}
            alt={`The scale’s display with ${scale.what}`}
            className="max-h-72 w-full bg-sunk object-contain"
          />
          <Button type="button" size="day" onClick={() => scale.typeDisplay(null)}>
            Type it later
          </Button>
        </div>
      ) : (
        <>
          <ScaleChoice
            dishes={dishes}
            scales={scales}
            lines={scale.lines}
            unweighed={scale.unweighed}
            draft={draft}
            scaleId={scale.scaleId}
            onChange={scale.change}
          />
          <ScaleWays
            of={on.of}
            way={on.way}
            onTop={scale.onTop}
            difference={scale.difference}
            onWay={scale.changeWay}
          />
        </>
      )}
      {/* Where the keys are, so that what is chosen above, off the screen, is never a surprise. */}
      <p className="text-lead wrap-anywhere">
        <b className="font-semibold">{scale.what}</b>, {wayInWords(on.of, on.way, scale.before)}
      </p>
      <Field
        form="scale"
        name="shows"
        label="The scale shows, g"
        state={{ ...UNTOUCHED, problems }}
      >
        {(wired) => (
          <input
            {...wired}
            inputMode="none"
            autoComplete="off"
            className={`${CONTROL} min-h-16 text-right font-slate text-figure`}
            value={draft.digits}
            onChange={({ target }) => scale.type(target.value)}
          />
        )}
      </Field>
      <p role="status" className="min-h-6 text-lead font-semibold">
        {scale.words}
      </p>
      <Keypad onKey={scale.press} onBack={scale.back} />
      {!display && on.way === 'direct' && (
        <div className="grid gap-2">
          {draft.containerMg > 0 && (
            <p className="text-lead">{scaleGramsText(draft.containerMg)} g come off.</p>
          )}
          <Button type="button" size="day" onClick={scale.tare}>
            Tare: this is the empty bowl
          </Button>
          {draft.containerMg > 0 && (
            <Button type="button" size="day" onClick={() => scale.change({ containerMg: 0 })}>
              Nothing comes off
            </Button>
          )}
        </div>
      )}
      <div className="grid gap-3 [&>button]:min-h-20">
        {scale.doubt !== null && (
          <>
            <p role="alert" className="text-lead font-semibold text-hand">
              {scale.doubt} It is not kept yet.
            </p>
            <Button
              type="button"
              size="day"
              disabled={!ready}
              onClick={() => void scale.keep(true)}
            >
              It is right: keep it
            </Button>
          </>
        )}
        <Button tone="go" size="day" disabled={!ready}>
          Keep this weight
        </Button>
        {!display && (
          <label
            className={`${buttonClass('plain', 'day')} has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-ink`}
          >
            Photo of the display now, type later
            <input
              type="file"
              accept="image/*"
              capture="environment"
              className="unseen"
              disabled={!ready}
              onChange={({ target }) => {
                const [file] = target.files ?? [];
                if (file) void scale.photograph(file);
                target.value = '';
              }}
            />
          </label>
        )}
      </div>
    </form>
  );
}
