import { ButtonForm } from '../../../../_forms/button-form';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { Segment } from '#lib/episode/schema';
import { pinWords } from '#lib/shoot/step-words';
import { clockTyped } from '#lib/units/read-typed';
import { addPin, removePin, savePin } from '../times-actions';
import { Adding, Part } from './part';
import { PinForm } from './pin-form';
import { Row } from './row';
import { newRow, pinsOf, revOf, rowHref, standsOpen, stepTitle, type DayPage } from './view';
import { pinTime } from '#lib/shoot/pins';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** Steps that a clock time of the day can hold: not those of the evening before, but the one that is tied already. */
const stepsOf = (segment: Segment, tied = '') =>
  segment.steps
    .filter(({ id, evening }) => !evening || id === tied)
    .map((step) => ({ value: step.id, words: step.title }));

const EVENING = 'It does not hold: this step is done the evening before.';

/** The steps of a segment that are tied to a clock time. */
export function SegmentPins({ page, segment }: Props) {
  const pins = pinsOf(page, segment);
  const row = newRow('pin', segment.id);
  const pinned = new Set(pins.map(({ stepId }) => stepId));
  const free = segment.steps.find(({ id, evening }) => !evening && !pinned.has(id));
  return (
    <Part
      title="Tied to a clock time"
      empty="Every step may start as soon as the rest allows."
      open={standsOpen(page, [row, ...pins.map(({ id }) => id)])}
    >
      {pins.map((pin) => (
        <PinRow key={pin.id} page={page} segment={segment} pin={pin} />
      ))}
      <Adding page={page} row={row} words="Tie a step to a time" to={segment.title}>
        <PinForm
          id={row}
          action={addPin}
          hidden={{ episodeId: page.file.episode.id, dayId: page.day.id }}
          pin={{ stepId: free?.id ?? '', when: 'notBefore', at: '' }}
          steps={stepsOf(segment)}
          submit="Tie it"
          cancelHref={rowHref(page, row)}
        />
      </Adding>
    </Part>
  );
}

function PinRow({ page, segment, pin }: Props & { readonly pin: FilmingDay['pins'][number] }) {
  const ids = {
    episodeId: page.file.episode.id,
    segmentId: segment.id,
    pinId: pin.id,
    rev: revOf(page, pin.id),
  };
  const { when, min } = pinTime(pin);
  const isEvening = segment.steps.some(({ id, evening }) => evening && id === pin.stepId);
  const title = pinWords(pin, (stepId) => stepTitle([segment], stepId));
  return (
    <Row page={page} id={pin.id} title={title} note={isEvening ? EVENING : ''} plain>
      <PinForm
        id={`pin-${pin.id}`}
        action={savePin}
        hidden={ids}
        pin={{ stepId: pin.stepId, when, at: clockTyped(min) }}
        steps={stepsOf(segment, pin.stepId)}
        submit="Save the time"
        cancelHref={rowHref(page, pin.id)}
      />
      <ButtonForm action={removePin} values={ids} tone="hand" size="usual">
        Let it start at any time
      </ButtonForm>
    </Row>
  );
}
