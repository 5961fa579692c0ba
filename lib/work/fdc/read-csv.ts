import { pipeline } from 'node:stream/promises';
import { parse, type CsvError } from 'csv-parse';
import { DownloadError } from '#lib/work/fdc/faults';
import type { DownloadFile } from '#lib/work/fdc/open-download';
import { watched, type Tell } from '#lib/work/fdc/progress';

/** The columns that are read, by their published names; those of `lacking` may be absent and are blank then. */
export interface Columns<Name extends string> {
  readonly needed: readonly Name[];
  readonly lacking: readonly Name[];
}

/** The cells of a row by the name of its column. */
export type Cells<Name extends string> = (name: Name) => string;

export interface CsvHandlers<Name extends string> {
  readonly row: (cell: Cells<Name>, at: string) => void;
  readonly fault: (at: string, why: string) => void;
  readonly tell: Tell;
}

/** A row longer than this is a quote that was never closed. */
const LONGEST_ROW = 1_000_000;

/**
 * Reads a table row by row, by the names in its first line (their order and further columns do not matter; a
 * byte order mark, CRLF, and quotes, commas and line ends within quotes do as RFC 4180 says). A row that cannot
 * be taken apart, or has not as many cells as the first line, is told and passed over; where its quotes do not
 * match, the row after it may be lost with it. A table without a column that is needed is refused, and one with a
 * quote that is never closed.
 */
export async function readCsv<Name extends string>(
  file: DownloadFile,
  { needed, lacking }: Columns<Name>,
  { row, fault, tell }: CsvHandlers<Name>,
): Promise<void> {
  const source = await watched(file, tell);
  const parser = parse({
    bom: true,
    relax_column_count: true,
    skip_empty_lines: true,
    skip_records_with_error: true,
    max_record_size: LONGEST_ROW,
    on_skip: (error) => {
      if (error?.code === 'CSV_MAX_RECORD_SIZE') source.destroy(neverClosed(file.name, number + 1));
      else fault(`line ${Number(error?.lines ?? 0)}`, skipWords(error));
      return undefined;
    },
  });
  let at: Map<Name, number> | null = null;
  let width = 0;
  let number = 0;
  let cells: readonly string[] = [];
  const cell = (name: Name) => cells[at?.get(name) ?? -1] ?? '';
  const take = (record: readonly string[]) => {
    number += 1;
    if (at === null) {
      at = placesOf(file.name, record, needed, lacking);
      width = record.length;
    } else if (record.length !== width) {
      fault(`row ${number}`, `it has ${record.length} cells, the first line has ${width}`);
    } else {
      cells = record;
      row(cell, `row ${number}`);
    }
  };
  // What is thrown inside a pipeline comes out of it as its being given up.
  let thrown: Error | null = null;
  const each = async (records: AsyncIterable<readonly string[]>) => {
    try {
      for await (const record of records) take(record);
    } catch (error) {
      thrown ??= error instanceof Error ? error : new Error(String(error));
      throw error;
    }
  };
  await pipeline(source, parser, each).catch((error: unknown) => {
    throw thrown ?? error;
  });
  if (at === null)
    throw new DownloadError(`${file.name} is empty: not even its column names are there.`);
}

function placesOf<Name extends string>(
  file: string,
  header: readonly string[],
  needed: readonly Name[],
  lacking: readonly Name[],
): Map<Name, number> {
  const names = header.map((name) => name.trim().toLowerCase());
  const missing = needed.filter((name) => !names.includes(name));
  if (missing.length > 0) {
    throw new DownloadError(
      `${file} lacks the ${missing.length === 1 ? 'column' : 'columns'} ${missing.join(', ')}. ` +
        `Its first line names: ${header.slice(0, 12).join(', ').slice(0, 300)}. ` +
        'Give the table as published, with commas between its columns.',
    );
  }
  return new Map(
    [...needed, ...lacking].flatMap((name) => {
      const place = names.indexOf(name);
      return place < 0 ? [] : [[name, place] as const];
    }),
  );
}

/** Where quotes stop making sense nothing after them can be told apart. */
function neverClosed(file: string, row: number): DownloadError {
  return new DownloadError(
    `${file}: row ${row} or one soon after it opens a quote that is not closed within ${LONGEST_ROW} bytes. ` +
      'Mend that row, or download the file again.',
  );
}

const SKIPPED: Readonly<Record<string, string>> = {
  CSV_INVALID_CLOSING_QUOTE: 'a quote stands inside a cell and is not doubled',
  CSV_QUOTE_NOT_CLOSED: 'a quote is opened and never closed, so the table ends within it',
  INVALID_OPENING_QUOTE: 'a quote begins in the middle of a cell',
};

function skipWords(error: CsvError | undefined): string {
  const code = String(error?.code ?? '');
  return (
    SKIPPED[code] ??
    `it cannot be taken apart (${error?.message ?? 'no reason given'})`.slice(0, 200)
  );
}
