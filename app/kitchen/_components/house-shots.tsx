import { ButtonForm } from '../../_forms/button-form';
import type { Choice } from '../../_ui/form/field';
import type { HouseShot, Kitchen } from '#lib/episode/kitchen-schema';
import { MOMENT_CHOICES, shotLine, USUAL_HOUSE_SHOTS } from '#lib/shoot/house-shots';
import type { StoredKitchen } from '#lib/store/read-kitchen';
import { printRuntime } from '#lib/units/print';
import { beginHouseShots, moveHouseShot, removeHouseShot } from '../day-actions';
import { HouseShotForm } from './day-forms';

const MOMENTS: readonly Choice[] = MOMENT_CHOICES;

/** The shots that every dish of this kitchen gets, in the order in which they are got. */
export function HouseShots({ kitchen, revs }: StoredKitchen) {
  const { houseShots } = kitchen;
  return (
    <>
      {houseShots.length === 0 && <Usual kitchen={kitchen} />}
      <ol className={houseShots.length === 0 ? '' : 'border-t border-line'}>
        {houseShots.map((shot, at) => (
          <ShotItem
            key={shot.id}
            kitchenId={kitchen.id}
            shot={shot}
            rev={revs[shot.id] ?? 0}
            isFirst={at === 0}
            isLast={at === houseShots.length - 1}
          />
        ))}
      </ol>
      <details>
        <summary className="link min-h-11 content-center">Add a shot of every dish</summary>
        <HouseShotForm
          id="new-house-shot"
          values={{ title: '', moment: 'still', framing: '', length: '' }}
          moments={MOMENTS}
          hidden={{ kitchenId: kitchen.id }}
          isNew
        />
      </details>
    </>
  );
}

function Usual({ kitchen }: { readonly kitchen: Kitchen }) {
  return (
    <div className="mb-3">
      <p>None yet. A list to begin with, common practice, no source:</p>
      <ul className="my-2 ml-5 list-disc">
        {USUAL_HOUSE_SHOTS.map((shot) => (
          <li key={shot.title}>{shotLine(shot)}</li>
        ))}
      </ul>
      <ButtonForm
        action={beginHouseShots}
        values={{ kitchenId: kitchen.id }}
        tone="plain"
        size="usual"
      >
        Begin with these and change them
      </ButtonForm>
    </div>
  );
}

interface ItemProps {
  readonly kitchenId: string;
  readonly shot: HouseShot;
  readonly rev: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

function ShotItem({ kitchenId, shot, rev, isFirst, isLast }: ItemProps) {
  const { id, title, moment, framing, lengthS } = shot;
  const move = (to: 'up' | 'down') => (
    <ButtonForm
      action={moveHouseShot}
      values={{ kitchenId, shotId: id, to }}
      label={`Move ${title} ${to}`}
    >
      {to === 'up' ? 'Up' : 'Down'}
    </ButtonForm>
  );
  return (
    <li className="border-b border-line py-1">
      <div className="flex flex-wrap items-start justify-between gap-x-4">
        <details className="min-w-0 grow">
          <summary className="min-h-11 content-center wrap-anywhere">{shotLine(shot)}</summary>
          <div className="my-3">
            <HouseShotForm
              id={`house-shot-${id}`}
              values={{
                title,
                moment,
                framing,
                length: lengthS === 0 ? '' : printRuntime(lengthS),
              }}
              moments={MOMENTS}
              hidden={{ shotId: id, rev }}
            />
            <div className="mt-2">
              <ButtonForm action={removeHouseShot} values={{ partId: id, rev }} tone="hand">
                Take out {title}
              </ButtonForm>
            </div>
          </div>
        </details>
        <span className="flex min-h-11 items-center gap-2">
          {!isFirst && move('up')}
          {!isLast && move('down')}
        </span>
      </div>
    </li>
  );
}
