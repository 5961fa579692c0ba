'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../_ui/form/field';
import {
  addAppliance,
  addHouseShot,
  saveAppliance,
  saveCounts,
  saveHouseShot,
} from '../day-actions';

const DECIMAL = { inputMode: 'decimal', autoComplete: 'off' } as const;
const WHOLE = { inputMode: 'numeric', autoComplete: 'off' } as const;

type Hidden = Readonly<Record<string, string | number>>;

interface CountsProps {
  readonly hidden: Hidden;
  readonly values: {
    readonly cleanDown: string;
    readonly videoMbps: string;
    readonly cameraChange: string;
    readonly counterPlaces: string;
  };
}

/** What the filming day counts of this kitchen; what is left empty is not counted. */
export function CountsForm({ hidden, values }: CountsProps) {
  const form = 'counts';
  return (
    <FormFrame
      id={form}
      action={saveCounts}
      fields={['cleanDown', 'cameraChange', 'counterPlaces', 'videoMbps']}
      hidden={hidden}
    >
      {(state) => (
        <div className="grid gap-4">
          <div className="grid items-end gap-4 sm:grid-cols-2 lg:grid-cols-4">
            <TextField
              form={form}
              name="cleanDown"
              label="Clean down, minutes"
              hint="Hands, board and counter after raw meat, fish or egg."
              state={state}
              initial={values.cleanDown}
              control={DECIMAL}
            />
            <TextField
              form={form}
              name="cameraChange"
              label="Move the camera, minutes"
              hint="Empty: moves are not counted."
              state={state}
              initial={values.cameraChange}
              control={DECIMAL}
            />
            <TextField
              form={form}
              name="counterPlaces"
              label="Places on the counter"
              hint="Empty: the counter is not counted."
              state={state}
              initial={values.counterPlaces}
              control={WHOLE}
            />
            <TextField
              form={form}
              name="videoMbps"
              label="Camera writes, Mbit/s"
              hint="Says how much card space a day takes."
              state={state}
              initial={values.videoMbps}
              control={WHOLE}
            />
          </div>
          <div>
            <Button>Save what the day counts</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

interface ApplianceProps {
  readonly id: string;
  readonly values: { readonly name: string; readonly places: string };
  readonly hidden: Hidden;
  readonly isNew?: boolean;
}

/** What takes food and runs by itself, and how much of it at a time. */
export function ApplianceForm({ id, values, hidden, isNew = false }: ApplianceProps) {
  return (
    <FormFrame
      id={id}
      action={isNew ? addAppliance : saveAppliance}
      fields={['name', 'places']}
      hidden={hidden}
    >
      {(state) => (
        <div className="grid grid-cols-2 items-end gap-4 md:max-w-3xl md:grid-cols-[2fr_1fr_auto]">
          <TextField form={id} name="name" label="Appliance" state={state} initial={values.name} />
          <TextField
            form={id}
            name="places"
            label="Steps at a time"
            state={state}
            initial={values.places}
            control={WHOLE}
          />
          <Button>{isNew ? 'Add the appliance' : 'Save'}</Button>
        </div>
      )}
    </FormFrame>
  );
}

interface HouseShotProps {
  readonly id: string;
  readonly values: {
    readonly title: string;
    readonly moment: string;
    readonly framing: string;
    readonly length: string;
  };
  readonly moments: readonly Choice[];
  readonly hidden: Hidden;
  readonly isNew?: boolean;
}

/** A shot that every dish gets: what is seen, at which moment, how it is framed, how long in the edit. */
export function HouseShotForm({ id, values, moments, hidden, isNew = false }: HouseShotProps) {
  return (
    <FormFrame
      id={id}
      action={isNew ? addHouseShot : saveHouseShot}
      fields={['title', 'moment', 'framing', 'length']}
      hidden={hidden}
    >
      {(state) => (
        <div className="grid items-end gap-4 sm:grid-cols-2 lg:grid-cols-[2fr_1.5fr_1fr_1fr_auto]">
          <TextField
            form={id}
            name="title"
            label="What is seen"
            state={state}
            initial={values.title}
          />
          <ChoiceField
            form={id}
            name="moment"
            label="Got at"
            state={state}
            choices={moments}
            initial={values.moment}
          />
          <TextField
            form={id}
            name="framing"
            label="Framing"
            state={state}
            initial={values.framing}
          />
          <TextField
            form={id}
            name="length"
            label="Length, as 0:08"
            state={state}
            initial={values.length}
            control={{ autoComplete: 'off' }}
          />
          <Button>{isNew ? 'Add the shot' : 'Save'}</Button>
        </div>
      )}
    </FormFrame>
  );
}
