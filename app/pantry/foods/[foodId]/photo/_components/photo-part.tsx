import { photoSizeText } from '#lib/foods/photo-kinds';
import type { FoodVersion } from '#lib/foods/food';
import type { FoodPhoto } from '#lib/store/photos-of-foods';
import { ButtonForm } from '../../../../../_forms/button-form';
import type { Choice } from '../../../../../_ui/form/field';
import { putBackPhoto, takeOutPhoto } from '../actions';
import { PhotoForm } from './photo-form';
import { PhotosHeading } from './photos-heading';

interface Props {
  readonly foodId: string;
  readonly foodName: string;
  /** The readings of its label, the one in use first. */
  readonly versions: readonly FoodVersion[];
  readonly photos: readonly FoodPhoto[];
  /** The one that was just taken out. */
  readonly out: FoodPhoto | null;
}

/** The photos of a label's panel, to be held against the values that were read from it. */
export function PhotoPart({ foodId, foodName, versions, photos, out }: Props) {
  const [inUse, ...earlier] = versions;
  if (!inUse) return null;
  const of = (version: FoodVersion) => photos.filter(({ versionId }) => versionId === version.id);
  const shown = (version: FoodVersion) =>
    of(version).map((photo) => (
      <PhotoFigure
        key={photo.id}
        foodId={foodId}
        alt={`Photo of the panel of ${foodName}, ${readingWords(version)}`}
        reading={readingWords(version)}
        photo={photo}
      />
    ));
  const choice = (version: FoodVersion): Choice => ({
    value: version.id,
    words: readingWords(version),
  });
  const before = earlier.filter((version) => of(version).length > 0);
  return (
    <section aria-labelledby="photos" className="min-w-0">
      <PhotosHeading state={[...photos, out].map((photo) => photo?.id).join(' ')} />
      <div role="status">{out && <TakenOut foodId={foodId} photo={out} versions={versions} />}</div>
      {shown(inUse)}
      {of(inUse).length === 0 && (
        <p className="mb-2 text-soft">No photo yet of {readingWords(inUse)}.</p>
      )}
      {before.length > 0 && (
        <details className="mb-3 print:hidden">
          <summary className="link min-h-11 content-center">
            Photos of {before.map(readingWords).join(' and of ')}
          </summary>
          {before.flatMap(shown)}
        </details>
      )}
      <div className="max-w-md print:hidden">
        {/* Begun anew with each photo that came or went, so that a file chosen is not sent twice. */}
        <PhotoForm
          key={photos.map(({ id }) => id).join(' ')}
          foodId={foodId}
          readings={[choice(inUse), ...earlier.map(choice)]}
        />
      </div>
    </section>
  );
}

/** "reading 2, read 2026-11-28". */
function readingWords({ seq, dateRead }: FoodVersion): string {
  return [`reading ${seq}`, dateRead && `read ${dateRead}`].filter(Boolean).join(', ');
}

interface FigureProps {
  readonly foodId: string;
  readonly alt: string;
  readonly reading: string;
  readonly photo: FoodPhoto;
}

function PhotoFigure({ foodId, alt, reading, photo }: FigureProps) {
  const { id, rev, sha256, name, size, there } = photo;
  const address = `/pantry/foods/${foodId}/photo/${sha256}`;
  return (
    <figure className="mb-4">
      {there ? (
        <a href={address} className="block w-fit max-w-full" title="The whole photo">
          {/* It is shown as it was kept; nothing may be made of it on the way. */}
          {/* eslint-disable-next-line @next/next/no-img-element */}
          <img
            src={address}
            alt={alt}
            className="block h-[30rem] max-h-[75vh] max-w-full border-[1.5px] border-line object-contain"
          />
        </a>
      ) : (
        <p className="border-l-[6px] border-hand py-1 pl-3">
          The file of this photo is missing from the folder of photos beside the database. A backup
          may have it; or attach the photo again.
        </p>
      )}
      <figcaption className="flex flex-wrap items-center gap-x-4 text-fine text-soft">
        <span className="min-w-0 wrap-anywhere">
          {reading} · {name}, {photoSizeText(size)}
        </span>
        <ButtonForm
          action={takeOutPhoto}
          values={{ foodId, photoId: id, rev }}
          label={`Take out the photo ${name}, ${reading}`}
        >
          Take out
        </ButtonForm>
      </figcaption>
    </figure>
  );
}

function TakenOut({
  foodId,
  photo,
  versions,
}: Pick<Props, 'foodId' | 'versions'> & { readonly photo: FoodPhoto }) {
  const version = versions.find(({ id }) => id === photo.versionId);
  return (
    <div className="mb-3 border-l-[6px] border-ink py-1 pl-3 print:hidden">
      <p>
        {photo.name} was taken out{version && ` of ${readingWords(version)}`}.
      </p>
      <ButtonForm action={putBackPhoto} values={{ foodId, photoId: photo.id }} tone="plain">
        Put it back
      </ButtonForm>
    </div>
  );
}
