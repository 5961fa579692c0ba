import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { Food } from '#lib/foods/food';
import { keepsInFridge } from '#lib/safety/keeps-in-fridge';
import { lotLastDay } from '#lib/shopping/counted-stock';
import { readFoodPhotos, readPhotoTakenOut } from '#lib/store/photos-of-foods';
import { countFoodUses, readFoodUses } from '#lib/store/read-food-uses';
import { readFood, readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { readPantryFoods, type FoodInUse } from '#lib/store/read-foods-in-use';
import { readKitchen } from '#lib/store/read-kitchen';
import { readMergedInto, readPartOf } from '#lib/store/read-merged';
import { readPrices } from '#lib/store/read-prices';
import { readProduct } from '#lib/store/read-product';
import { readLastCurrency, readShopNames } from '#lib/store/read-shops';
import { findFoods } from '#lib/store/reference-search';
import { localDate } from '#lib/units/local-date';
import { FoodView } from '../../_components/food-view';
import { MergedNotice } from '../../_components/merged-notice';
import { PacksPart } from '../../_components/packs-part';
import { ProductFacts } from '../../_components/product-facts';
import { SecondWitnessPart } from '../../_components/second-witness-part';
import { StockPart } from '../../_components/stock-part';
import { keepsWords } from '../../_components/stock-words';
import { UsesPart } from '../../_components/uses-part';
import { PhotoPart } from './photo/_components/photo-part';

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
  readonly searchParams: Promise<{
    readonly witness?: string | readonly string[];
    /** A photo that was just taken out. */
    readonly out?: string | readonly string[];
  }>;
}

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  const stored = await readStoredFood((await params).foodId);
  return { title: stored?.food.name ?? 'No such food' };
}

const FOUND = 12;
/** Ingredients that a food's own page shows; all stand on a page of their own. */
const USES = 4;
const LONGEST = 200;

export default async function FoodPage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored) notFound();
  const { food, own, revs } = stored;
  const { witness: asked, out } = await searchParams;
  const query = (typeof asked === 'string' ? asked : '').slice(0, LONGEST).trim();
  const versions = await readFoodVersions(foodId);
  const partOf = await readPartOf(foodId);
  const product = own ? null : await readProduct(foodId);
  const [home] = await readPantryFoods([foodId]);
  const witness = own && (
    <SecondWitnessPart
      food={food}
      rev={revs[foodId] ?? 0}
      witness={food.witnessId === null ? null : await readFood(food.witnessId)}
      query={query}
      found={query === '' ? null : await tableFoods(query)}
    />
  );
  const photos = own && food.kind === 'label' ? await readFoodPhotos(foodId) : null;
  const part = photos && (
    <PhotoPart
      foodId={foodId}
      foodName={food.name}
      versions={versions}
      photos={photos}
      out={typeof out === 'string' ? await readPhotoTakenOut(foodId, out) : null}
    />
  );
  return (
    <FoodView
      stored={stored}
      versions={versions}
      witness={witness}
      photos={part}
      photographed={photos !== null && photos.length > 0}
      merged={
        <>
          <MergedNotice partOf={partOf} within={await readMergedInto(foodId)} />
          {product && <ProductFacts product={product} />}
        </>
      }
      part={partOf !== null}
      stock={home && <StockOf food={food} home={home} />}
      packs={
        <PacksPart
          stored={stored}
          prices={await readPrices(foodId)}
          shops={(await readShopNames()).map(({ name }) => name)}
          currency={await readLastCurrency()}
        />
      }
      uses={
        <UsesPart
          foodId={foodId}
          uses={(await readFoodUses(foodId, { take: USES })).rows}
          count={await countFoodUses(foodId)}
        />
      }
    />
  );
}

/** Foods of a published table that fit the words. */
async function tableFoods(query: string): Promise<readonly Food[]> {
  const found = await findFoods(query, { take: 2 * FOUND, products: false });
  return found.filter(({ kind }) => kind === 'reference').slice(0, FOUND);
}

/** What there is of a food at home, as it counts today. */
async function StockOf({ food, home }: { readonly food: Food; readonly home: FoodInUse }) {
  const zone = (await readKitchen())?.kitchen.zone ?? 'UTC';
  const opened = home.said?.opened ?? null;
  const lastDays = new Map(
    home.lots.flatMap((lot) => {
      const last = lotLastDay(lot, food, opened);
      return last ? [[lot.id, last] as const] : [];
    }),
  );
  return (
    <StockPart
      food={home}
      today={localDate(new Date(), zone)}
      lastDays={lastDays}
      keeps={keepsWords(opened, keepsInFridge(food))}
    />
  );
}
