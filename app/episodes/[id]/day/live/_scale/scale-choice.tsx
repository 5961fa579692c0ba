import { CONTROL } from '../../../../../_ui/form/field';
import type { DayDish, DayIngredient, DishesOnDay } from '#lib/overview/dishes-on-day';
import { wayFor } from '#lib/shoot/next-on-scale';
import type { OnScale } from '#lib/shoot/scale-entries';
import type { Unweighed } from '#lib/shoot/unweighed';
import type { ScaleDraft } from './scale-draft';

interface Props {
  readonly dishes: readonly DayDish[];
  readonly scales: DishesOnDay['scales'];
  /** The ingredients of the chosen dish, those first that the step at hand asks for. */
  readonly lines: readonly DayIngredient[];
  readonly unweighed: readonly Unweighed[];
  readonly draft: ScaleDraft;
  readonly scaleId: string;
  readonly onChange: (change: Partial<ScaleDraft>) => void;
}

/** The finished dish among the ingredients, which have ids of their own. */
const FINISHED = '';

const OF: readonly (readonly [OnScale['of'], string])[] = [
  ['raw', 'as the recipe says it'],
  ['cooked', 'cooked'],
  ['left', 'what is left of it'],
];

/** What is on the scale. */
export function ScaleChoice(props: Props) {
  const { dishes, scales, lines, unweighed, draft, scaleId, onChange } = props;
  const open = new Set(unweighed.map(({ lineId }) => lineId));
  const select = `${CONTROL} min-h-14`;
  return (
    <div className="grid gap-3">
      {dishes.length > 1 && (
        <label className="grid gap-1 font-semibold">
          Dish
          <select
            className={select}
            value={draft.segmentId}
            onChange={({ target }) => onChange({ segmentId: target.value })}
          >
            {dishes.map(({ segmentId, title }) => (
              <option key={segmentId} value={segmentId}>
                {title}
              </option>
            ))}
          </select>
        </label>
      )}
      <label className="grid gap-1 font-semibold">
        On the scale
        <select
          className={select}
          value={draft.lineId ?? FINISHED}
          onChange={({ target: { value } }) =>
            onChange(
              value === FINISHED
                ? { lineId: null, of: 'finished', way: wayFor('finished', draft.way) }
                : { lineId: value, of: draft.of === 'finished' ? 'raw' : draft.of },
            )
          }
        >
          {lines.map(({ id, text }) => (
            <option key={id} value={id}>
              {open.has(id) ? text : `${text} (weighed)`}
            </option>
          ))}
          <option value={FINISHED}>the finished dish</option>
        </select>
      </label>
      <details>
        <summary className="link min-h-14 content-center text-lead">
          Cooked, or what is left{scales.length > 1 && '; another scale'}
        </summary>
        <div className="grid gap-3">
          {draft.lineId !== null && (
            <label className="grid gap-1 font-semibold">
              How it is weighed
              <select
                className={select}
                value={draft.of}
                onChange={({ target }) => {
                  const of = OF.find(([each]) => each === target.value)?.[0] ?? 'raw';
                  onChange({ of, way: wayFor(of, draft.way) });
                }}
              >
                {OF.map(([of, words]) => (
                  <option key={of} value={of}>
                    {words}
                  </option>
                ))}
              </select>
            </label>
          )}
          {scales.length > 1 && (
            <label className="grid gap-1 font-semibold">
              Scale
              <select
                className={select}
                value={scaleId}
                onChange={({ target }) => onChange({ scaleId: target.value })}
              >
                {scales.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
      </details>
    </div>
  );
}
