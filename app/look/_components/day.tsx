import { DayColumns, type DayColumn } from '../../_ui/day-columns';
import { clockText } from '#lib/shoot/day-words';
import type { Specimen } from './specimen';

const columns = (key: string): readonly DayColumn[] => [
  {
    id: `${key}-hands`,
    name: 'Hands',
    blocks: [
      { id: 'a', startMin: 540, endMin: 560, title: 'Weigh and chop', tone: 'hand' as const },
      { id: 'b', startMin: 560, endMin: 566, title: 'Toast the barley', tone: 'hand' as const },
      { id: 'c', startMin: 566, endMin: 568, title: 'Look in', tone: 'hand' as const },
      { id: 'd', startMin: 580, endMin: 595, title: 'Wash up', tone: 'pause' as const },
    ].map(clocked),
  },
  {
    id: `${key}-oven`,
    name: 'Oven',
    blocks: [
      { id: 'e', startMin: 545, endMin: 560, title: 'Heat to 428 °F', tone: 'pause' as const },
      {
        id: 'f',
        startMin: 562,
        endMin: 600,
        title: 'Bake',
        detail: '428 °F',
        tone: 'self' as const,
      },
    ].map(clocked),
  },
];

function clocked<T extends { readonly startMin: number; readonly endMin: number }>(block: T) {
  return { ...block, start: clockText(block.startMin), end: clockText(block.endMin) };
}

export const DAY: readonly Specimen[] = [
  {
    name: 'Day by the clock',
    when: 'For the shooting order at a glance: red edge for the hands, glass bars for what runs by itself, dashes for what only passes.',
    paper: true,
    show: (key) => (
      <DayColumns
        columns={columns(key)}
        startMin={540}
        endMin={600}
        hour={clockText}
        now={{ min: 571, text: '9:31' }}
      />
    ),
  },
];
