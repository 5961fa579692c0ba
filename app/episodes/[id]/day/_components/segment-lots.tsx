import { ButtonForm } from '../../../../_forms/button-form';
import type { Segment } from '#lib/episode/schema';
import type { Perishable } from '#lib/episode/step-schema';
import { LIMIT_HINT, limitWords, spanWords, USUAL_LIMIT_S } from '#lib/shoot/step-words';
import { minutesTyped } from '#lib/units/read-typed';
import { addLot, addSpan, removeLot, removeSpan, saveLot, saveSpan } from '../lot-actions';
import type { SpanRow } from '#lib/store/read-step-ties';
import { LotForm } from './lot-form';
import { Adding, Part } from './part';
import { Row } from './row';
import { SpanForm } from './span-form';
import { lotRows, newRow, revOf, rowHref, spansOf, standsOpen, stepChoices } from './view';
import { stepTitle, type DayPage } from './view';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** The food of a segment that must not stand out long, and when it does. */
export function SegmentLots({ page, segment }: Props) {
  const row = newRow('lot', segment.id);
  return (
    <Part
      title="Food that must stay cold"
      empty="Meat, fish, eggs, dairy, cooked food: each gets a clock of its own."
      open={standsOpen(page, [row, ...lotRows(page, segment)])}
    >
      {segment.perishables.map((lot) => (
        <LotRow key={lot.id} page={page} segment={segment} lot={lot} />
      ))}
      <Adding page={page} row={row} words="Add food that must stay cold" to={segment.title}>
        <LotForm
          id={row}
          action={addLot}
          hidden={{ episodeId: page.file.episode.id, segmentId: segment.id }}
          lot={{ name: '', limit: minutesTyped(USUAL_LIMIT_S), thrownAway: false }}
          limitHint={LIMIT_HINT}
          submit="Add the food"
          cancelHref={rowHref(page, row)}
        />
      </Adding>
    </Part>
  );
}

function LotRow({ page, segment, lot }: Props & { readonly lot: Perishable }) {
  const ids = {
    episodeId: page.file.episode.id,
    segmentId: segment.id,
    lotId: lot.id,
    rev: revOf(page, lot.id),
  };
  const lotText = {
    name: lot.name,
    limit: minutesTyped(lot.limitS),
    thrownAway: lot.thrownAway,
  };
  return (
    <Row
      page={page}
      id={lot.id}
      title={lot.name}
      note={limitWords(lot)}
      below={<Spans page={page} segment={segment} lot={lot} />}
    >
      <LotForm
        id={`lot-${lot.id}`}
        action={saveLot}
        hidden={ids}
        lot={lotText}
        limitHint={LIMIT_HINT}
        submit="Save the food"
        cancelHref={rowHref(page, lot.id)}
      />
      <ButtonForm action={removeLot} values={ids} tone="hand" size="usual">
        Take the food out, with when it stands out
      </ButtonForm>
    </Row>
  );
}

function Spans({ page, segment, lot }: Props & { readonly lot: Perishable }) {
  const spans = spansOf(page, lot.id);
  const row = newRow('span', lot.id);
  const [first] = segment.steps;
  return (
    <div className="mt-1 ml-4 border-l border-line pl-4">
      {spans.length === 0 && !lot.thrownAway && (
        <p className="text-fine font-semibold text-hand">
          Its clock does not run yet: say when it stands out.
        </p>
      )}
      <ul>
        {spans.map((span) => (
          <SpanItem key={span.id} page={page} segment={segment} span={span} />
        ))}
      </ul>
      <Adding page={page} row={row} words="Say when it stands out" to={lot.name}>
        <SpanForm
          id={row}
          action={addSpan}
          hidden={{ episodeId: page.file.episode.id, lotId: lot.id }}
          span={{
            fromStepId: first?.id ?? '',
            fromAnchor: 'start',
            toStepId: segment.steps.at(-1)?.id ?? '',
            toAnchor: 'end',
          }}
          steps={stepChoices(page, [segment])}
          submit="Let its clock run"
          cancelHref={rowHref(page, lot.id)}
        />
      </Adding>
    </div>
  );
}

function SpanItem({ page, segment, span }: Props & { readonly span: SpanRow }) {
  const { segments, id: episodeId } = page.file.episode;
  const ids = { episodeId, lotId: span.perishableId, spanId: span.id, rev: span.rev };
  return (
    <Row
      page={page}
      id={span.id}
      title={spanWords(span, (stepId) => stepTitle(segments, stepId))}
      plain
    >
      <SpanForm
        id={`span-${span.id}`}
        action={saveSpan}
        hidden={ids}
        span={span}
        steps={stepChoices(page, [segment])}
        submit="Save when it stands out"
        cancelHref={rowHref(page, span.id)}
      />
      <ButtonForm action={removeSpan} values={ids} tone="hand" size="usual">
        Take this time out
      </ButtonForm>
    </Row>
  );
}
