import Link from 'next/link';
import type { ReactNode } from 'react';
import { ButtonForm } from '../../_forms/button-form';
import { ButtonLink } from '../../_ui/button';
import { SlateHead } from '../../_ui/slate-head';
import type { FoodVersion } from '#lib/foods/food';
import { ALLERGEN_WORDS } from '#lib/publish/allergen-list';
import { priceText, SECTION_WORDS } from '#lib/shopping/shopping-text';
import type { StoredFood } from '#lib/store/read-foods';
import { printGrams } from '#lib/units/print';
import { removeAllergen, removeFood, removePack, takeBackReading } from '../actions';
import { AllergenForm, FoodForm, NewLotForm, PackForm } from './food-parts';
import { FoodValues, Measures, SourceText } from './food-values';
import { RefuseForm } from './refuse-form';
import { YieldsPart } from './yields-part';

interface Props {
  readonly stored: StoredFood;
  /** All readings of its label, the one in use first. */
  readonly versions: readonly FoodVersion[];
  /** What its second witness says, for an own food. */
  readonly witness?: ReactNode;
  /** The photos of its panel, for a food with a label. */
  readonly photos?: ReactNode;
  /** The photos stand beside the values, to be compared; without any, their form stands under them. */
  readonly photographed?: boolean;
}

const COLUMNS = 'grid gap-x-12 gap-y-8 lg:grid-cols-[minmax(0,1fr)_minmax(0,1fr)]';

const STANDING_WORDS = {
  declared: 'contains it, says the label',
  mayContain: 'may contain it, says the label',
  proposed: 'proposed by a rule, not published before you confirm it',
  confirmed: 'contains it, you said',
  denied: 'not in it, you said',
} as const;

/** One food: its values with their digits and source, and for an own food what can be changed. */
export function FoodView({
  stored,
  versions,
  witness,
  photos = null,
  photographed = false,
}: Props) {
  const { food, own } = stored;
  const label = (
    <div className="min-w-0">
      <FoodValues food={food} />
      {own && (
        <div className="mt-4 flex flex-wrap items-center gap-x-5 gap-y-2 print:hidden">
          <ButtonLink href={`/pantry/foods/${food.id}/again`}>Read the label again</ButtonLink>
          {versions.length > 1 && (
            <ButtonForm
              action={takeBackReading}
              values={{ foodId: food.id, versionId: food.version.id }}
            >
              Take back reading {food.version.seq}
            </ButtonForm>
          )}
        </div>
      )}
      <OldReadings versions={versions} />
    </div>
  );
  return (
    <>
      <SlateHead
        kind={own ? 'Own food' : 'Reference food'}
        title={food.name}
        cells={[{ name: 'In a shop', value: SECTION_WORDS[food.section] }]}
      />
      <p className="mb-6">
        <Link className="link inline-flex min-h-11 items-center" href="/pantry">
          Back to the pantry
        </Link>
      </p>
      {photographed && (
        <div className={COLUMNS}>
          {label}
          {photos}
        </div>
      )}
      <div className={photographed ? `mt-8 ${COLUMNS}` : COLUMNS}>
        <div className="min-w-0">
          {!photographed && label}
          {!photographed && photos && <div className="mt-8">{photos}</div>}
          {witness}
          <Measures food={food} />
          <YieldsPart stored={stored} />
        </div>
        <div className="grid min-w-0 content-start gap-8">
          <Section id="stock" title="Put into stock">
            <NewLotForm foodId={food.id} />
          </Section>
          <Packs stored={stored} />
          <Allergens stored={stored} />
          {own && (
            <Section id="peel-and-trim" title="Peel and trim">
              <RefuseForm
                key={food.version.id}
                foodId={food.id}
                versionId={food.version.id}
                refuse={refuseTexts(food.version)}
              />
            </Section>
          )}
          {own && (
            <Section id="name" title="Name and place">
              <FoodForm
                foodId={food.id}
                rev={stored.revs[food.id] ?? 0}
                name={food.name}
                section={food.section}
              />
              <div className="mt-4">
                <ButtonForm
                  action={removeFood}
                  values={{ foodId: food.id, rev: stored.revs[food.id] ?? 0 }}
                  tone="hand"
                >
                  Take the food out of the pantry
                </ButtonForm>
              </div>
            </Section>
          )}
        </div>
      </div>
    </>
  );
}

function Section({
  id,
  title,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}) {
  return (
    <section aria-labelledby={id}>
      <h2 id={id} className="mb-2">
        {title}
      </h2>
      {children}
    </section>
  );
}

function OldReadings({ versions }: Pick<Props, 'versions'>) {
  const old = versions.slice(1);
  if (old.length === 0) return null;
  return (
    <details className="mt-4">
      <summary className="link min-h-11 content-center">Earlier readings of its label</summary>
      <ul>
        {old.map((version) => (
          <li key={version.id} className="border-b border-line py-1">
            Reading {version.seq}: <SourceText version={version} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Packs({ stored }: Pick<Props, 'stored'>) {
  const { food, packs, revs } = stored;
  return (
    <Section id="packs" title="Packs">
      <ul className="mb-3">
        {packs.map((pack) => (
          <li
            key={pack.id}
            className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-1"
          >
            <span>
              {pack.name}
              {pack.netMg !== null && `, ${printGrams(pack.netMg)} g`}
              {pack.netMl !== null && `, ${pack.netMl} ml`}
              {pack.drainedMg !== null && `, ${printGrams(pack.drainedMg)} g drained`}
              {pack.price && (
                <span className="text-soft">
                  {' '}
                  {priceText(pack.price.minor, pack.price.currency)}, seen {pack.price.seenOn}
                </span>
              )}
            </span>
            <ButtonForm
              action={removePack}
              values={{ foodId: food.id, partId: pack.id, rev: revs[pack.id] ?? 0 }}
              label={`Take out the pack ${pack.name}`}
            >
              Take out
            </ButtonForm>
          </li>
        ))}
        {packs.length === 0 && (
          <li className="text-soft">No pack is known: the shopping list counts in grams.</li>
        )}
      </ul>
      <PackForm foodId={food.id} foodName={food.name} />
    </Section>
  );
}

function Allergens({ stored }: Pick<Props, 'stored'>) {
  const { food, revs, own } = stored;
  return (
    <Section id="allergens" title="Allergens">
      <ul className="mb-3">
        {food.allergens.map(({ id, allergen, standing, reason }) => (
          <li
            key={id}
            className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-1"
          >
            <span>
              <b className="font-semibold">{ALLERGEN_WORDS[allergen]}</b>:{' '}
              {STANDING_WORDS[standing]}
              {standing === 'proposed' && <span className="text-soft"> ({reason})</span>}
            </span>
            {(own || standing !== 'proposed') && (
              <ButtonForm
                action={removeAllergen}
                values={{ foodId: food.id, partId: id, rev: revs[id] ?? 0 }}
                label={`Take out ${ALLERGEN_WORDS[allergen]}`}
              >
                Take out
              </ButtonForm>
            )}
          </li>
        ))}
        {food.allergens.length === 0 && <li className="text-soft">None is known.</li>}
      </ul>
      <AllergenForm foodId={food.id} />
    </Section>
  );
}

function refuseTexts({ refuse }: FoodVersion) {
  return {
    percent: refuse === null ? '' : String(refuse.percent),
    text: refuse?.text ?? '',
    inValues: refuse?.inValues ?? false,
  };
}
