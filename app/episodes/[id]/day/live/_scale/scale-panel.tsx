import { useState } from 'react';
import { Button } from '../../../../../_ui/button';
import type { OpenDisplay } from '#lib/shoot/day-weighings';
import { ScaleForm } from './scale-form';
import { useScale, type ScaleParts } from './use-scale';
import { WeighedList } from './weighed-list';

interface Props extends ScaleParts {
  readonly ready: boolean;
  readonly srcOf: (sha256: string) => string;
  /** Photos that this device has not sent yet. */
  readonly unsent: number;
  readonly clock: (at: string) => string;
}

/** Weighing on the day, folded away until it is wanted. */
export function ScalePanel(props: Props) {
  const [open, setOpen] = useState(false);
  if (props.dishes.length === 0) return null;
  const untyped = props.displays.length;
  return (
    <section
      aria-labelledby="scale"
      className="mt-6 border-[1.5px] border-ink bg-raised p-4 print:hidden"
    >
      <h2 id="scale" className="lettering text-lead text-soft uppercase">
        Scale
      </h2>
      {untyped > 0 && (
        <p className="text-lead font-semibold text-hand">
          {untyped === 1 ? '1 photo waits' : `${untyped} photos wait`} for a number
        </p>
      )}
      {props.unsent > 0 && (
        <p className="text-soft">
          {props.unsent === 1 ? '1 photo is' : `${props.unsent} photos are`} on this phone, and
          still to be sent.
        </p>
      )}
      <div className="mt-2">
        <Button
          type="button"
          size="day"
          aria-expanded={open}
          disabled={!props.ready}
          onClick={() => setOpen(!open)}
        >
          {open ? 'Put the scale away' : 'Weigh'}
        </Button>
      </div>
      {open && <OpenScale {...props} />}
    </section>
  );
}

function OpenScale(props: Props) {
  const { dishes, scales, displays, ready, srcOf, clock, onEnter, onSaid } = props;
  const scale = useScale(props);
  if (scales.length === 0 || scale === null) {
    return <p className="mt-3">Add a scale on the page Kitchen: a weight is read on one.</p>;
  }
  const own: readonly OpenDisplay[] = displays.filter(
    ({ recipeId }) => recipeId === scale.dish.recipeId,
  );
  return (
    <div className="mt-4">
      <ScaleForm scale={scale} dishes={dishes} scales={scales} ready={ready} srcOf={srcOf} />
      <WeighedList
        dish={scale.dish}
        unweighed={scale.unweighed}
        displays={own}
        clock={clock}
        onType={scale.typeDisplay}
        onStrikeOut={(weighingId, what) => {
          onSaid(`Struck out: ${what}.`);
          void onEnter({ kind: 'struckOut', refs: {}, payload: { weighingId } });
        }}
      />
    </div>
  );
}
