import { ButtonForm } from '../../_forms/button-form';
import type { StoredKitchen } from '#lib/store/read-kitchen';
import { minutesTyped } from '#lib/units/read-typed';
import { removeAppliance } from '../day-actions';
import { ApplianceForm, CountsForm } from './day-forms';

/** What else runs by itself in this kitchen, each with how much it takes at a time. */
export function Appliances({ kitchen, revs }: StoredKitchen) {
  return (
    <>
      {kitchen.appliances.map(({ id, name, places }) => {
        const rev = revs[id] ?? 0;
        return (
          <div key={id} className="mb-4 border-b border-line pb-3">
            <ApplianceForm
              id={`appliance-${id}`}
              values={{ name, places: String(places) }}
              hidden={{ applianceId: id, rev }}
            />
            <div className="mt-2">
              <ButtonForm action={removeAppliance} values={{ partId: id, rev }} tone="hand">
                Take out {name}
              </ButtonForm>
            </div>
          </div>
        );
      })}
      <details>
        <summary className="link min-h-11 content-center">Add an appliance</summary>
        <ApplianceForm
          id="new-appliance"
          values={{ name: '', places: '1' }}
          hidden={{ kitchenId: kitchen.id }}
          isNew
        />
      </details>
    </>
  );
}

/** What the day counts beside the appliances. */
export function Counts({ kitchen, revs }: StoredKitchen) {
  const { cleanDownS, videoMbps, cameraChangeS, counterPlaces } = kitchen;
  const typed = (value: number | null) => (value === null ? '' : String(value));
  return (
    <CountsForm
      hidden={{ kitchenId: kitchen.id, rev: revs[kitchen.id] ?? 0 }}
      values={{
        cleanDown: minutesTyped(cleanDownS),
        cameraChange: cameraChangeS === null ? '' : minutesTyped(cameraChangeS),
        counterPlaces: typed(counterPlaces),
        videoMbps: typed(videoMbps),
      }}
    />
  );
}
