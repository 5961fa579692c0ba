import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { Food } from '#lib/foods/food';
import { readFoodPhotos, readPhotoTakenOut } from '#lib/store/photos-of-foods';
import { readFood, readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { findFoods } from '#lib/store/reference-search';
import { FoodView } from '../../_components/food-view';
import { SecondWitnessPart } from '../../_components/second-witness-part';
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
const LONGEST = 200;

export default async function FoodPage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored) notFound();
  const { food, own, revs } = stored;
  const { witness: asked, out } = await searchParams;
  const query = (typeof asked === 'string' ? asked : '').slice(0, LONGEST).trim();
  const versions = await readFoodVersions(foodId);
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
    />
  );
}

/** Foods of a published table that fit the words. */
async function tableFoods(query: string): Promise<readonly Food[]> {
  const found = await findFoods(query, { take: 2 * FOUND });
  return found.filter(({ kind }) => kind === 'reference').slice(0, FOUND);
}
