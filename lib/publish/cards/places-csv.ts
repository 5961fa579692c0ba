import { placeWords, type CardPlaces } from '#lib/publish/cards/card-places';
import { csvText } from '#lib/units/csv';

const HEAD = [
  'file',
  'card',
  'title',
  'in (timecode)',
  'out (timecode)',
  'in (frame)',
  'out (frame)',
  'frames a second',
  'place',
];

/** Where each card goes as a table for other programs, RFC 4180; those without a place say why, with empty frames. */
export function placesCsv({ rate, places }: CardPlaces): string {
  return csvText(
    HEAD,
    places.map((place) => {
      const { file, span, why } = place;
      const at = placeWords(place, rate);
      return [
        `${file.name}.png`,
        file.card.kind,
        file.card.title,
        at?.from ?? '',
        at?.to ?? '',
        span ? String(span.inFrame) : '',
        span ? String(span.outFrame) : '',
        rate ? `${rate.num}/${rate.den}` : '',
        why === null ? 'in the cut' : `no place yet: ${why}`,
      ];
    }),
  );
}
