import { differenceWords, lengthWords } from '#lib/cut/length-words';
import { printTimecode } from '#lib/cut/timecode';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import type { TimelineView } from './read-timeline';

const HEAD = (
  <>
    <Th>Segment</Th>
    <Th number>Talk</Th>
    <Th number>Shots</Th>
    <Th number>Planned</Th>
    <Th number>Typed</Th>
    <Th number>Cut</Th>
    <Th number>Cut against planned</Th>
  </>
);

const typedWords = (seconds: number): string => (seconds > 0 ? lengthWords(seconds) : '–');

/** Each segment's length before the edit and in it, with the sums. */
export function PlannedAndCut({ timeline }: { readonly timeline: TimelineView }) {
  const { runtime, points, rate } = timeline;
  const { segments } = runtime;
  const place = (frame: number | null) =>
    frame === null || rate === null ? '–' : printTimecode(frame, rate);
  return (
    <section aria-labelledby="lengths">
      <h2 id="lengths">Planned and cut</h2>
      <p className="mt-1 mb-4 max-w-[70ch] text-soft">
        Planned is the time it takes to say the talking points, numbers as they are spoken, and the
        lengths of the shots. Where a segment has neither, it is the length typed at the running
        order.
      </p>
      <Table
        caption="Planned length of each segment, and its length in the cut"
        head={HEAD}
        stacks
        close
      >
        {segments.map((row, index) => (
          <Tr key={row.id}>
            <RowHead>
              {row.title}
              <span className="hidden text-fine print:block">
                {place(points[index]?.inFrame ?? null)} to {place(points[index]?.outFrame ?? null)}
              </span>
            </RowHead>
            <Td number>
              <Narrow>talk </Narrow>
              {row.words > 0 ? lengthWords(row.talkS) : '–'}
              {row.words > 0 && (
                <span className="block text-fine text-soft max-md:inline"> {row.words} words</span>
              )}
            </Td>
            <Td number>
              <Narrow>shots </Narrow>
              {typedWords(row.shotsS)}
            </Td>
            <Td number>
              <Narrow>planned </Narrow>
              <b className="font-semibold">{lengthWords(row.plannedS)}</b>
            </Td>
            <Td number>
              <Narrow>typed </Narrow>
              {typedWords(row.typedS)}
            </Td>
            <Td number>
              <Narrow>cut </Narrow>
              <b className="font-semibold">{lengthWords(row.cutS)}</b>
            </Td>
            <Td number>{differenceWords(row.differenceS)}</Td>
          </Tr>
        ))}
        <Tr>
          <RowHead>
            <b className="font-semibold">All together</b>
          </RowHead>
          <Td number />
          <Td number />
          <Td number>
            <Narrow>planned </Narrow>
            <b className="font-semibold">{lengthWords(runtime.plannedS)}</b>
          </Td>
          <Td number>
            <Narrow>typed </Narrow>
            {typedWords(runtime.typedS)}
          </Td>
          <Td number>
            <Narrow>cut </Narrow>
            <b className="font-semibold">{lengthWords(runtime.cutS)}</b>
          </Td>
          <Td number>{differenceWords(runtime.differenceS)}</Td>
        </Tr>
      </Table>
      <Unknown timeline={timeline} />
    </section>
  );
}

/** What a column's head says, where the heads are out of sight. */
function Narrow({ children }: { readonly children: string }) {
  return <span className="text-fine text-soft md:hidden print:hidden">{children}</span>;
}

/** Sums leave out what nobody knows, and say so. */
function Unknown({ timeline: { runtime } }: { readonly timeline: TimelineView }) {
  const uncut = runtime.segments.filter(({ cutS }) => cutS === null);
  if (uncut.length === 0) return null;
  return (
    <p className="mt-2 text-fine">
      Without a beginning and an end in the cut, and in no sum of it:{' '}
      {uncut.map(({ title }) => title).join(', ')}.
    </p>
  );
}
