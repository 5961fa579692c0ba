import { useState } from 'react';
import { Button } from '../../../../_ui/button';
import { CONTROL } from '../../../../_ui/form/field';
import { photoOf, type KeptPhoto } from '../../../../_sync/photo-bytes';
import { SHELF_NUTRIENTS } from '#lib/foods/shelf-label';
import { NUTRIENTS } from '#lib/foods/nutrients';
import type { InsteadEvent } from '#lib/shopping/list-events';
import { readInstead, shelfLabel, type InsteadTexts } from '#lib/shopping/shop-typed';
import { InsteadNumbers } from './instead-numbers';
import type { WorkOut } from './use-worked-out';

interface Props {
  readonly foodId: string;
  /** The food that is not there. */
  readonly name: string;
  readonly workOut: WorkOut | null;
  readonly onTake: (payload: InsteadEvent['payload'], photo: KeptPhoto | null) => void;
  readonly onCancel: () => void;
}

const EMPTY: InsteadTexts = {
  name: '',
  same: false,
  count: '1',
  grams: '',
  basis: 'per100g',
  servingGrams: '',
  values: {},
};

const BASES = [
  ['per100g', '100 g'],
  ['serving', 'a serving'],
  ['per100ml', '100 ml'],
] as const;

/** Not there: what was taken instead, a few values of its label or a photo, and what that does to the dishes. */
export function InsteadForm({ foodId, name, workOut, onTake, onCancel }: Props) {
  const [texts, setTexts] = useState<InsteadTexts>(EMPTY);
  const [photo, setPhoto] = useState<KeptPhoto | null>(null);
  const [faults, setFaults] = useState<Readonly<Record<string, string>>>({});
  const id = (field: string) => `instead-${foodId}-${field}`;
  const set = (part: Partial<InsteadTexts>) => setTexts((before) => ({ ...before, ...part }));
  const field = (
    of: string,
    label: string,
    value: string,
    set: (text: string) => void,
    unit?: string,
  ) => (
    <Line id={id(of)} label={label} unit={unit} value={value} onValue={set} fault={faults[of]} />
  );
  const take = () => {
    const read = readInstead(texts, foodId, photo?.sha256 ?? null);
    if (read.ok) onTake(read.value, photo);
    else setFaults(read.faults);
  };
  const photograph = async (file: File | undefined) => {
    if (!file) return;
    const read = await photoOf(file);
    if (read.ok) setPhoto(read.value);
    setFaults(read.ok ? {} : { photo: read.problems[0]?.message ?? '' });
  };
  const numbers = workOut && !texts.same ? workOut(foodId, shelfLabel(texts)) : [];
  return (
    <form
      aria-label={`Instead of ${name}`}
      className="grid max-w-xl gap-3 border-l-[6px] border-hand py-2 pl-3"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <h3 className="text-head">Not there: took instead…</h3>
      {field('name', 'What was taken', texts.name, (text) => set({ name: text }))}
      <label className="flex min-h-14 items-center gap-3">
        <input
          type="checkbox"
          className="size-7 shrink-0 accent-ink"
          checked={texts.same}
          onChange={(event) => set({ same: event.currentTarget.checked })}
        />
        The same food in another pack: its numbers stay
      </label>
      <div className="grid grid-cols-2 gap-3">
        {field('count', 'How many', texts.count, (text) => set({ count: text }))}
        {field('grams', 'Grams in one', texts.grams, (text) => set({ grams: text }), 'g')}
      </div>
      {!texts.same && (
        <fieldset className="grid gap-3">
          <legend className="mb-1 font-semibold">From its label, as far as you look</legend>
          <div className="grid grid-cols-2 gap-3">
            <div>
              <label htmlFor={id('basis')} className="mb-1 block font-semibold">
                Values for
              </label>
              <select
                id={id('basis')}
                className={`${CONTROL} min-h-14`}
                value={texts.basis}
                onChange={(event) => {
                  const basis = BASES.find(([value]) => value === event.currentTarget.value);
                  if (basis) set({ basis: basis[0] });
                }}
              >
                {BASES.map(([value, words]) => (
                  <option key={value} value={value}>
                    {words}
                  </option>
                ))}
              </select>
            </div>
            {texts.basis === 'serving' &&
              field(
                'serving',
                'One serving',
                texts.servingGrams,
                (text) => set({ servingGrams: text }),
                'g',
              )}
          </div>
          <div className="grid grid-cols-2 gap-3">
            {SHELF_NUTRIENTS.map((nutrient) => (
              <Line
                key={nutrient}
                id={id(nutrient)}
                label={NUTRIENTS[nutrient].label}
                unit={NUTRIENTS[nutrient].unit}
                value={texts.values[nutrient] ?? ''}
                onValue={(text) => set({ values: { ...texts.values, [nutrient]: text } })}
                fault={faults[nutrient]}
              />
            ))}
          </div>
        </fieldset>
      )}
      <div>
        <label htmlFor={id('photo')} className="mb-1 block font-semibold">
          Or a photo of the panel, to type from at home
        </label>
        <input
          id={id('photo')}
          type="file"
          accept="image/*"
          capture="environment"
          className={`${CONTROL} min-h-14`}
          onChange={(event) => void photograph(event.currentTarget.files?.[0])}
        />
        <p role="alert" className="text-fine font-semibold text-hand">
          {faults.photo}
        </p>
        {photo && <p className="text-fine">The photo is kept with the entry.</p>}
      </div>
      {workOut === null && !texts.same && (
        <p className="text-fine text-soft">
          What it does to the dishes is shown once they have been fetched.
        </p>
      )}
      {numbers.length > 0 && <InsteadNumbers taken={numbers} />}
      <Button tone="go" size="day">
        Take it instead
      </Button>
      <Button type="button" size="day" onClick={onCancel}>
        Back
      </Button>
    </form>
  );
}

interface LineProps {
  readonly id: string;
  readonly label: string;
  readonly unit?: string | undefined;
  readonly value: string;
  readonly onValue: (text: string) => void;
  readonly fault: string | undefined;
}

function Line({ id, label, unit, value, onValue, fault }: LineProps) {
  return (
    <div className="min-w-0">
      <label htmlFor={id} className="mb-1 block font-semibold">
        {label}
        {unit && <span className="text-soft"> ({unit})</span>}
      </label>
      <input
        id={id}
        className={`${CONTROL} min-h-14`}
        value={value}
        autoComplete="off"
        inputMode={unit ? 'decimal' : 'text'}
        aria-invalid={fault ? true : undefined}
        aria-describedby={fault ? `${id}-error` : undefined}
        onChange={(event) => onValue(event.currentTarget.value)}
      />
      {fault && (
        <p id={`${id}-error`} className="mt-1 text-fine font-semibold text-hand">
          {fault}
        </p>
      )}
    </div>
  );
}
