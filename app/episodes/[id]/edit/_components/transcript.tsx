'use client';

import { useMemo } from 'react';
import { KIND_WORDS } from '#lib/overview/said-kinds';
import type { Standing } from '#lib/overview/said-rows';
import { clockWords } from './clock-words';
import { RowsWindow } from './rows-window';
import { piecesOf, transcriptOf, type Line } from './transcript-lines';
import { useTranscript } from './use-transcript';
import { atHref, type EditPage } from './view';

interface Props {
  readonly page: EditPage;
  readonly chosen: string | null;
  readonly tick: number;
  readonly onChoose: (id: string) => void;
}

/** Told by the line under the words, in black and white as well. */
const LINES: Readonly<Record<Standing, string>> = {
  agrees: 'decoration-1',
  edge: 'decoration-dashed decoration-2',
  off: 'decoration-double decoration-[3px] font-semibold text-hand',
  unknown: 'decoration-dotted decoration-2',
  aside: 'decoration-edge line-through',
};

/** Everything that is said, line by line, with the statements in it. */
export function Transcript({ page, chosen, tick, onChoose }: Props) {
  const read = useTranscript(page.episodeId, page.version);
  const texts = read.kind === 'read' ? read.texts : null;
  const { lines, lineOf } = useMemo(() => transcriptOf(texts ?? [], page.rows), [texts, page.rows]);
  const size = 'h-96 lg:h-[min(48rem,80vh)]';
  if (read.kind !== 'read') {
    return (
      <p role="status" className={`${size} p-4 text-soft`}>
        {read.kind === 'reading'
          ? 'Reading the texts …'
          : 'The texts could not be read: open the page again.'}
      </p>
    );
  }
  const index = chosen === null ? undefined : lineOf.get(chosen);
  return (
    <RowsWindow
      label="Transcript"
      count={lines.length}
      keyOf={(at) => String(at)}
      estimate={30}
      show={index === undefined ? null : { index, tick }}
      align="center"
      className={size}
    >
      {(at) => {
        const line = lines[at];
        return line && <Row page={page} line={line} chosen={chosen} onChoose={onChoose} />;
      }}
    </RowsWindow>
  );
}

function Row({ page, line, chosen, onChoose }: Omit<Props, 'tick'> & { readonly line: Line }) {
  if (line.kind === 'head') {
    return (
      <p className="lettering border-b border-line bg-sunk px-3 py-1 text-fine text-soft">
        {line.text.name === ''
          ? KIND_WORDS[line.text.kind]
          : `${KIND_WORDS[line.text.kind]}: ${line.text.name}`}
      </p>
    );
  }
  return (
    <p className="flex gap-3 px-3 py-0.5">
      <span className="w-12 shrink-0 text-right text-fine leading-6 text-soft">
        {line.startMs === null ? '' : clockWords(line.startMs)}
      </span>
      <span className="min-w-0 wrap-anywhere whitespace-pre-line">
        {piecesOf(line).map(({ start, words, row }) =>
          row === null ? (
            words
          ) : (
            <a
              key={start}
              href={atHref(page.episodeId, row.id)}
              aria-current={row.id === chosen || undefined}
              className={`underline underline-offset-4 aria-[current]:bg-ink aria-[current]:text-paper ${LINES[row.standing]}`}
              onClick={(event) => {
                event.preventDefault();
                onChoose(row.id);
              }}
            >
              {words.trimEnd()}
              <span className="unseen">, {row.verdict}</span>
            </a>
          ),
        )}
      </span>
    </p>
  );
}
