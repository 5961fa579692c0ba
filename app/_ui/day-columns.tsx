import type { CSSProperties, ReactNode } from 'react';
import { fullHours, placeBlocks, REM_PER_MIN } from './geometry';
import { ScrollRegion } from './scroll-region';

/** `hand`: takes the person's hands. `self`: runs by itself. `pause`: heating up, washing, resting. */
export type BlockTone = 'hand' | 'self' | 'pause';

export interface DayBlock {
  readonly id: string;
  readonly startMin: number;
  readonly endMin: number;
  /** Start and end as read: "10:20", "10:45". */
  readonly start: string;
  readonly end: string;
  readonly title: string;
  readonly detail?: string;
  readonly tone: BlockTone;
  readonly href?: string;
  /** The step that it is, where it can be moved by hand. */
  readonly stepId?: string;
}

export interface DayColumn {
  readonly id: string;
  readonly name: string;
  readonly blocks: readonly DayBlock[];
}

interface Props {
  readonly columns: readonly DayColumn[];
  readonly startMin: number;
  readonly endMin: number;
  /** Names a full hour, given in minutes: "9:00". */
  readonly hour: (minutes: number) => string;
  /** Now, as minutes and as read; drawn as a line across. */
  readonly now?: { readonly min: number; readonly text: string };
}

const TONES: Readonly<Record<BlockTone, string>> = {
  hand: 'border-[1.5px] border-l-[6px] border-hand bg-hand-wash text-ink',
  self: 'glass rounded-[14px] border-[1.5px] border-self text-ink',
  pause: 'border border-dashed border-edge bg-paper text-soft',
};

/** The shooting order down the page by the clock: a column for the hands and one for each appliance. */
export function DayColumns({ columns, startMin, endMin, hour, now }: Props) {
  const hours = fullHours(startMin, endMin);
  const from = hours[0] ?? startMin;
  const to = hours.at(-1) ?? endMin;
  const frame = placeBlocks([{ id: 'day', startMin: from, endMin: to }], from, REM_PER_MIN);
  const marks = placeBlocks(
    hours.map((min) => ({ id: String(min), startMin: min, endMin: min + 1 })),
    from,
    REM_PER_MIN,
  );
  const line =
    now && placeBlocks([{ id: 'now', startMin: now.min, endMin: now.min }], from, REM_PER_MIN);
  return (
    <ScrollRegion label="The day by the clock">
      <div className="relative min-w-[34rem]">
        <div className="grid auto-cols-fr grid-flow-col border-b-[1.5px] border-ink pl-14">
          {columns.map((column) => (
            <h3 key={column.id} id={`column-${column.id}`} className="px-1.5 pb-1 text-lead">
              {column.name}
            </h3>
          ))}
        </div>
        <div className="relative" style={{ height: `${frame.get('day')?.heightRem ?? 0}rem` }}>
          {hours.map((min) => (
            <div
              key={min}
              aria-hidden="true"
              className="absolute inset-x-0 border-t border-dashed border-line text-fine text-soft first:border-transparent"
              style={{ top: `${marks.get(String(min))?.topRem ?? 0}rem` }}
            >
              {hour(min)}
            </div>
          ))}
          <div className="absolute inset-y-0 right-0 left-14 grid auto-cols-fr grid-flow-col">
            {columns.map((column) => (
              <Column key={column.id} column={column} from={from} />
            ))}
          </div>
          {now && line && (
            <div
              className="absolute inset-x-0 z-10 border-t-[3px] border-ink"
              style={{ top: `${line.get('now')?.topRem ?? 0}rem` }}
            >
              <b className="absolute -top-4 left-0 bg-ink px-1.5 text-paper">
                <span className="unseen">now </span>
                {now.text}
              </b>
            </div>
          )}
        </div>
      </div>
    </ScrollRegion>
  );
}

function Column({ column, from }: { readonly column: DayColumn; readonly from: number }) {
  const places = placeBlocks(column.blocks, from, REM_PER_MIN);
  return (
    <ol aria-labelledby={`column-${column.id}`} className="relative min-w-0 border-l border-line">
      {column.blocks.map((block) => {
        const place = places.get(block.id);
        return (
          <li
            key={block.id}
            className="absolute p-px pl-1.5"
            style={{
              top: `${place?.topRem ?? 0}rem`,
              height: `${place?.heightRem ?? 0}rem`,
              left: `calc(100% / ${place?.lanes ?? 1} * ${place?.lane ?? 0})`,
              width: `calc(100% / ${place?.lanes ?? 1})`,
            }}
          >
            <Block
              block={block}
              tight={place?.tight ?? false}
              target={place?.target ?? true}
              textLines={place?.textLines ?? 1}
            />
          </li>
        );
      })}
    </ol>
  );
}

interface BlockProps {
  readonly block: DayBlock;
  readonly tight: boolean;
  /** One too low to be hit leads nowhere; the list beside the columns does. */
  readonly target: boolean;
  readonly textLines: number;
}

function Block({ block, tight, target, textLines }: BlockProps) {
  const words: ReactNode = (
    <>
      <span className="unseen">
        {block.start} to {block.end}:{' '}
      </span>
      <span className="line-clamp-(--lines)" style={{ '--lines': textLines } as CSSProperties}>
        <b className="font-semibold">{block.title}</b>
        {block.detail && <span className="text-soft"> {block.detail}</span>}
      </span>
    </>
  );
  const size = tight ? 'text-[0.75rem] leading-none' : 'text-fine leading-tight';
  const className = `block h-full overflow-hidden px-2 ${size} ${TONES[block.tone]}`;
  const title = `${block.start} to ${block.end}, ${block.title}`;
  return block.href && target ? (
    <a
      href={block.href}
      className={className}
      title={title}
      draggable={false}
      data-step={block.stepId}
      data-start={block.stepId && block.startMin}
    >
      {words}
    </a>
  ) : (
    <div className={className} title={title}>
      {words}
    </div>
  );
}
