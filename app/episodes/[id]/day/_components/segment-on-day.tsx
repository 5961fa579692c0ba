import type { Choice } from '../../../../_ui/form/field';
import type { Segment } from '#lib/episode/schema';
import { FATE_WORDS, FILMED_WORDS, onDayWords, PART_WORDS } from '#lib/shoot/step-words';
import { OnDayForm } from './on-day-form';
import { Row } from './row';
import { onDayRow, revOf, rowHref, type DayPage } from './view';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

const choices = (words: Readonly<Record<string, string>>): Choice[] =>
  Object.entries(words).map(([value, said]) => ({ value, words: said }));

const PARTS = choices(PART_WORDS);
const FATES = choices({ '': 'not said', ...FATE_WORDS });
const TIMES = choices({ '': 'whenever it fits', ...FILMED_WORDS });

/** What of a segment is done on the day; nothing where it is not filmed on it. */
export function SegmentOnDay({ page, segment }: Props) {
  const place = page.day.segments.find(({ segmentId }) => segmentId === segment.id);
  if (!place) return null;
  const row = onDayRow(segment.id);
  return (
    <ul>
      <Row page={page} id={row} title={`On this day: ${onDayWords(place, segment)}`} plain>
        <OnDayForm
          id={row}
          hidden={{
            episodeId: page.file.episode.id,
            segmentId: segment.id,
            placeId: place.id,
            rev: revOf(page, place.id),
            wasFilmedWhen: segment.filmedWhen ?? '',
          }}
          values={{
            part: place.part,
            fate: place.fate ?? '',
            filmedWhen: segment.filmedWhen ?? '',
          }}
          parts={PARTS}
          fates={segment.recipe ? FATES : []}
          times={TIMES}
          cancelHref={rowHref(page, row)}
        />
      </Row>
    </ul>
  );
}
