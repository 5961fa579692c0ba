import Link from 'next/link';
import type { ReactNode } from 'react';
import { ButtonForm } from '../../_forms/button-form';
import { ButtonLink } from '../../_ui/button';
import { SlateHead } from '../../_ui/slate-head';
import type { FoodVersion } from '#lib/foods/food';
import { SECTION_WORDS } from '#lib/shopping/shopping-text';
import type { StoredFood } from '#lib/store/read-foods';
import { takeBackReading } from '../actions';
import { AllergensPart } from './allergens-part';
import { NewLotForm } from './food-parts';
import { FoodSection } from './food-section';
import { FoodValues, Measures } from './food-values';
import { OldReadings } from './old-readings';
import { OwnFoodParts } from './own-food-parts';
import { PacksPart } from './packs-part';
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
  /** Foods that are part of it now, or the one that it is part of. */
  readonly merged?: ReactNode;
  /** True where it is part of another food: only what its readings say stays here. */
  readonly part?: boolean;
  /** What there is of it at home; the form that puts some into stock where nothing is given. */
  readonly stock?: ReactNode;
  /** Its packs with all their prices; the packs alone where nothing is given. */
  readonly packs?: ReactNode;
  /** Where it is used. */
  readonly uses?: ReactNode;
}

const COLUMNS = 'grid gap-x-12 gap-y-8 lg:grid-cols-[minmax(0,1fr)_minmax(0,1fr)]';

/** One food: its values with their digits and source, and for an own food what can be changed. */
export function FoodView({
  stored,
  versions,
  witness,
  photos = null,
  photographed = false,
  merged,
  part = false,
  stock,
  packs,
  uses,
}: Props) {
  const { food } = stored;
  const own = stored.own && !part;
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
      <OldReadings foodId={food.id} versions={versions} />
    </div>
  );
  return (
    <>
      <SlateHead
        kind={stored.own ? 'Own food' : 'Reference food'}
        title={food.name}
        cells={[{ name: 'In a shop', value: SECTION_WORDS[food.section] }]}
      />
      {merged}
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
          {!part && witness}
          <Measures food={food} />
          {!part && <YieldsPart stored={stored} />}
        </div>
        {!part && (
          <div className="grid min-w-0 content-start gap-8 max-lg:order-first">
            {stock ?? (
              <FoodSection id="stock" title="Put into stock">
                <NewLotForm foodId={food.id} />
              </FoodSection>
            )}
            {packs ?? <PacksPart stored={stored} />}
            {uses}
            <AllergensPart stored={stored} />
            {own && <OwnFoodParts stored={stored} />}
          </div>
        )}
      </div>
    </>
  );
}
