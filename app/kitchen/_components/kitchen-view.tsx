import type { ReactNode } from 'react';
import { ButtonForm } from '../../_forms/button-form';
import { SlateHead } from '../../_ui/slate-head';
import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import { DEFAULT_KITCHEN } from '#lib/store/default-kitchen';
import type { StoredKitchen } from '#lib/store/read-kitchen';
import type { StoredShop } from '#lib/store/read-shop-walks';
import { printCelsius } from '#lib/units/print';
import { gramsText } from '#lib/units/read-quantity';
import { minutesTyped } from '#lib/units/read-typed';
import { removeChange, removeOven, removeScale } from '../actions';
import { SPREAD_KINDS } from '../schema';
import { Appliances, Counts } from './appliances';
import { HouseShots } from './house-shots';
import { Shops } from './shops';
import { ChangeForm, KitchenForm, OvenForm, ScaleForm, SpreadsForm } from './kitchen-forms';

interface Props {
  readonly stored: StoredKitchen;
  readonly zones: readonly string[];
  readonly shops?: readonly StoredShop[];
}

const SPREAD_WORDS: Readonly<Record<(typeof SPREAD_KINDS)[number], string>> = {
  spoon: 'Spoon',
  cup: 'Cup',
  piece: 'Piece',
  slice: 'Slice',
  handful: 'Handful',
  portion: 'Part of a dish',
};

/** The kitchen: where it is, its ovens with what was measured of them, its scales, its measures by eye. */
export function KitchenView({ stored, zones, shops = [] }: Props) {
  const { kitchen, revs } = stored;
  const [newOven] = DEFAULT_KITCHEN.ovens;
  return (
    <>
      <SlateHead
        kind="Kitchen"
        title={kitchen.name || 'Kitchen'}
        cells={[
          { name: 'Ovens', value: kitchen.ovens.length },
          { name: 'Burners', value: kitchen.burners },
        ]}
      />
      <Section id="place" title="Place and burners">
        <KitchenForm kitchen={kitchen} rev={revs[kitchen.id] ?? 0} zones={zones} />
      </Section>
      <Section
        id="ovens"
        title="Ovens"
        intro="The plan uses what was measured between two temperatures, and the two rates where nothing was. The rates a kitchen begins with are common practice, no source. Leave the hottest empty if you don’t know it: then nothing is too hot."
      >
        {kitchen.ovens.map((oven) => (
          <OvenPart key={oven.id} oven={oven} revs={revs} />
        ))}
        {newOven && (
          <details open={kitchen.ovens.length === 0}>
            <summary className="link min-h-11 content-center">Add an oven</summary>
            <OvenForm
              id="new-oven"
              oven={{ ...newOven, name: '' }}
              hidden={{ kitchenId: kitchen.id }}
              isNew
            />
          </details>
        )}
      </Section>
      <Section
        id="appliances"
        title="Appliances"
        intro="What takes food and runs by itself beside ovens and burners: a microwave, an air fryer, a rice cooker. A step can then run in it."
      >
        <Appliances {...stored} />
      </Section>
      <Section
        id="counts-part"
        title="What the day counts"
        intro="The minutes to clean down are common practice, no source; time yours once. The rest is counted only where it is filled in."
      >
        <Counts {...stored} />
      </Section>
      <Section
        id="house-shots"
        title="The shots of every dish"
        intro="What you get of each dish, in your own list. The filming day offers to add them to a dish by one press, each at its step."
      >
        <HouseShots {...stored} />
      </Section>
      <Section
        id="shops"
        title="Shops"
        intro="Your shopping list follows the order in which you walk through a shop. Prices are kept with a food in the pantry, by shop."
      >
        <Shops {...stored} shops={shops} />
      </Section>
      <Section
        id="scales"
        title="Scales"
        intro="A reading lies within half a step. All readings of one scale share one error, which is counted once."
      >
        <Scales kitchen={kitchen} revs={revs} />
      </Section>
      <Section
        id="spreads-part"
        title="Measures by eye"
        intro="How far a spoon or a handful may miss its weight. What you have weighed yourself is better: change it here."
      >
        <SpreadsForm
          kitchenId={kitchen.id}
          spreads={SPREAD_KINDS.map((kind) => {
            const own = kitchen.spreads.find((spread) => spread.kind === kind);
            const begins = DEFAULT_KITCHEN.spreads.find((spread) => spread.kind === kind);
            const permille = own?.permille ?? begins?.permille ?? 0;
            return {
              kind,
              words: SPREAD_WORDS[kind],
              permille,
              rev: own ? (revs[own.id] ?? 0) : 0,
              byDefault: permille === begins?.permille,
            };
          })}
        />
      </Section>
    </>
  );
}

function Section({
  id,
  title,
  intro,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly intro?: string;
  readonly children: ReactNode;
}) {
  return (
    <section aria-labelledby={id} className="mb-12">
      <h2 id={id}>{title}</h2>
      {intro && <p className="mt-1 max-w-[65ch] text-soft">{intro}</p>}
      <div className="mt-3">{children}</div>
    </section>
  );
}

type Revs = StoredKitchen['revs'];

function OvenPart({ oven, revs }: { readonly oven: Oven; readonly revs: Revs }) {
  const rev = revs[oven.id] ?? 0;
  return (
    <div className="mb-6 border-b border-line pb-5">
      <OvenForm id={`oven-${oven.id}`} oven={oven} hidden={{ ovenId: oven.id, rev }} />
      <h3 className="mt-4">Measured</h3>
      <ul className="mt-1 mb-3 max-w-xl">
        {oven.changes.map((change) => {
          const words = `${printCelsius(change.fromMilliC)} to ${printCelsius(change.toMilliC)}`;
          return (
            <li
              key={change.id}
              className="flex items-center justify-between gap-4 border-b border-line py-1"
            >
              <span>
                {words}: {minutesTyped(change.seconds)} min
              </span>
              <ButtonForm
                action={removeChange}
                values={{ partId: change.id, rev: revs[change.id] ?? 0 }}
                label={`Take out ${words}`}
              >
                Take out
              </ButtonForm>
            </li>
          );
        })}
        {oven.changes.length === 0 && (
          <li className="text-soft">
            Nothing yet. Time one preheat, and the plan is right from then on.
          </li>
        )}
      </ul>
      <ChangeForm ovenId={oven.id} />
      <div className="mt-3">
        <ButtonForm action={removeOven} values={{ partId: oven.id, rev }} tone="hand">
          Take out {oven.name}
        </ButtonForm>
      </div>
    </div>
  );
}

function Scales({ kitchen, revs }: { readonly kitchen: Kitchen; readonly revs: Revs }) {
  return (
    <>
      {kitchen.scales.map((scale) => {
        const rev = revs[scale.id] ?? 0;
        const mg = scale.resolutionMg;
        return (
          <div key={scale.id} className="mb-4 border-b border-line pb-3">
            <ScaleForm
              id={`scale-${scale.id}`}
              scale={scale}
              resolution={gramsText({ lowMg: mg, valueMg: mg, highMg: mg })}
              hidden={{ scaleId: scale.id, rev }}
            />
            <div className="mt-2">
              <ButtonForm action={removeScale} values={{ partId: scale.id, rev }} tone="hand">
                Take out {scale.name}
              </ButtonForm>
            </div>
          </div>
        );
      })}
      <details open={kitchen.scales.length === 0}>
        <summary className="link min-h-11 content-center">Add a scale</summary>
        <ScaleForm id="new-scale" scale={null} resolution="1" hidden={{ kitchenId: kitchen.id }} />
      </details>
    </>
  );
}
