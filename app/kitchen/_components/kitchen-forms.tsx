'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { AmountField } from '../../_ui/form/amount-field';
import { TextField, type Choice } from '../../_ui/form/field';
import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import { degreesTyped, permilleTyped, ppmTyped } from '#lib/units/read-typed';
import {
  addChange,
  addOven,
  addScale,
  saveKitchen,
  saveOven,
  saveScale,
  saveSpreads,
} from '../actions';

const DEGREES: readonly Choice[] = [
  { value: 'C', words: '°C' },
  { value: 'F', words: '°F' },
];
const DECIMAL = { inputMode: 'decimal', autoComplete: 'off' } as const;
const WHOLE = { inputMode: 'numeric', autoComplete: 'off' } as const;

interface KitchenProps {
  readonly kitchen: Kitchen;
  readonly rev: number;
  /** Names of time zones to choose from while typing. */
  readonly zones: readonly string[];
}

/** Where the kitchen is and what stands in it. */
export function KitchenForm({ kitchen, rev, zones }: KitchenProps) {
  const form = 'kitchen';
  const typed = (value: number | null) => (value === null ? '' : String(value));
  return (
    <FormFrame
      id={form}
      action={saveKitchen}
      fields={['name', 'zone', 'lat', 'lon', 'burners']}
      hidden={{ kitchenId: kitchen.id, rev }}
    >
      {(state) => (
        <div className="grid gap-4">
          <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[2fr_2fr_1fr]">
            <TextField form={form} name="name" label="Name" state={state} initial={kitchen.name} />
            <TextField
              form={form}
              name="zone"
              label="Time zone"
              state={state}
              initial={kitchen.zone}
              control={{ list: 'zones', autoComplete: 'off' }}
            />
            <datalist id="zones">
              {zones.map((zone) => (
                <option key={zone} value={zone} />
              ))}
            </datalist>
            <TextField
              form={form}
              name="burners"
              label="Burners"
              state={state}
              initial={String(kitchen.burners)}
              control={WHOLE}
            />
          </div>
          <div className="grid grid-cols-2 items-end gap-4 md:max-w-xl">
            <TextField
              form={form}
              name="lat"
              label="Latitude"
              hint="For daylight. South is minus."
              state={state}
              initial={typed(kitchen.lat)}
              control={DECIMAL}
            />
            <TextField
              form={form}
              name="lon"
              label="Longitude"
              hint="West is minus."
              state={state}
              initial={typed(kitchen.lon)}
              control={DECIMAL}
            />
          </div>
          <div>
            <Button tone="go">Save the kitchen</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

interface OvenProps {
  readonly id: string;
  readonly oven: Omit<Oven, 'id' | 'changes'>;
  readonly hidden: Readonly<Record<string, string | number>>;
  readonly isNew?: boolean;
}

/** An oven: its racks, and how fast it heats and cools where nothing was measured. */
export function OvenForm({ id, oven, hidden, isNew = false }: OvenProps) {
  return (
    <FormFrame
      id={id}
      action={isNew ? addOven : saveOven}
      fields={['name', 'racks', 'cold', 'most', 'heat', 'cool']}
      hidden={hidden}
    >
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[2fr_1fr_1.5fr_1.5fr] lg:grid-cols-[2fr_1fr_1.5fr_1.5fr_1.5fr_1.5fr_auto]">
          <TextField form={id} name="name" label="Oven" state={state} initial={oven.name} />
          <TextField
            form={id}
            name="racks"
            label="Racks"
            state={state}
            initial={String(oven.racks)}
            control={WHOLE}
          />
          <AmountField
            form={id}
            name="cold"
            label="Cold at"
            state={state}
            initial={degreesTyped(oven.coldMilliC, 'C')}
            unitName="coldUnit"
            units={DEGREES}
          />
          <AmountField
            form={id}
            name="most"
            label="Hottest"
            state={state}
            initial={oven.mostMilliC === null ? '' : degreesTyped(oven.mostMilliC, 'C')}
            unitName="mostUnit"
            units={DEGREES}
          />
          <TextField
            form={id}
            name="heat"
            label="Heats 1 °C in, s"
            state={state}
            initial={String(oven.heatSPerC)}
            control={WHOLE}
          />
          <TextField
            form={id}
            name="cool"
            label="Cools 1 °C in, s"
            state={state}
            initial={String(oven.coolSPerC)}
            control={WHOLE}
          />
          <Button>{isNew ? 'Add the oven' : 'Save'}</Button>
        </div>
      )}
    </FormFrame>
  );
}

/** A time that was measured between two temperatures. */
export function ChangeForm({ ovenId }: { readonly ovenId: string }) {
  const form = `change-${ovenId}`;
  return (
    <FormFrame id={form} action={addChange} fields={['from', 'to', 'took']} hidden={{ ovenId }}>
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[1fr_1fr_1fr_auto]">
          <AmountField
            form={form}
            name="from"
            label="From"
            state={state}
            unitName="fromUnit"
            units={DEGREES}
          />
          <AmountField
            form={form}
            name="to"
            label="To"
            state={state}
            unitName="toUnit"
            units={DEGREES}
          />
          <TextField
            form={form}
            name="took"
            label="Took, minutes"
            state={state}
            control={DECIMAL}
          />
          <Button>Add what was measured</Button>
        </div>
      )}
    </FormFrame>
  );
}

interface ScaleProps {
  readonly id: string;
  readonly scale: Pick<Kitchen['scales'][number], 'name' | 'resolutionMg' | 'accuracyPpm'> | null;
  readonly resolution: string;
  readonly hidden: Readonly<Record<string, string | number>>;
}

/** A scale: the step it shows, and how far all its readings may be off together. */
export function ScaleForm({ id, scale, resolution, hidden }: ScaleProps) {
  return (
    <FormFrame
      id={id}
      action={scale ? saveScale : addScale}
      fields={['name', 'resolution', 'accuracy']}
      hidden={hidden}
    >
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-[2fr_1fr_1fr_auto]">
          <TextField
            form={id}
            name="name"
            label="Scale"
            state={state}
            initial={scale?.name ?? ''}
          />
          <TextField
            form={id}
            name="resolution"
            label="One step shows, g"
            state={state}
            initial={resolution}
            control={DECIMAL}
          />
          <TextField
            form={id}
            name="accuracy"
            label="May be off by ± %"
            state={state}
            initial={ppmTyped(scale?.accuracyPpm ?? 0)}
            control={DECIMAL}
          />
          <Button>{scale ? 'Save' : 'Add the scale'}</Button>
        </div>
      )}
    </FormFrame>
  );
}

export interface SpreadText {
  readonly kind: string;
  readonly words: string;
  readonly permille: number;
  readonly rev: number;
  /** True where it is the value that a kitchen begins with. */
  readonly byDefault: boolean;
}

/** How far a measure by eye may miss, by its kind. */
export function SpreadsForm({
  kitchenId,
  spreads,
}: {
  readonly kitchenId: string;
  readonly spreads: readonly SpreadText[];
}) {
  const form = 'spreads';
  const revs = Object.fromEntries(spreads.map(({ kind, rev }) => [`rev-${kind}`, rev]));
  return (
    <FormFrame
      id={form}
      action={saveSpreads}
      fields={spreads.map(({ kind }) => kind)}
      hidden={{ kitchenId, ...revs }}
    >
      {(state) => (
        <div className="grid gap-4">
          <div className="grid grid-cols-2 items-end gap-4 md:grid-cols-3 lg:grid-cols-6">
            {spreads.map(({ kind, words, permille, byDefault }) => (
              <TextField
                key={kind}
                form={form}
                name={kind}
                label={`${words}, ± %`}
                hint={byDefault ? 'common practice, no source' : 'your own'}
                state={state}
                initial={permilleTyped(permille)}
                control={DECIMAL}
              />
            ))}
          </div>
          <div>
            <Button>Save measures by eye</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
