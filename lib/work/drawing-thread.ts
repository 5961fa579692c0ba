import { parentPort } from 'node:worker_threads';
import { svgInPaths, svgToPng } from './svg-to-png';

/** A drawing to be made a file in a thread of its own. */
export interface DrawingTask {
  readonly svg: string;
  /** `png`, or `svg` with its letters as paths. */
  readonly as: 'png' | 'svg';
}

/** The file's bytes, or why there are none. */
export type DrawingAnswer =
  | { readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly ok: false; readonly why: string };

if (parentPort !== null) {
  const port = parentPort;
  port.on('message', ({ svg, as }: DrawingTask) => {
    try {
      const made = as === 'png' ? svgToPng(svg) : svgInPaths(svg);
      const bytes = new Uint8Array(Buffer.from(made));
      const answer: DrawingAnswer = { ok: true, bytes };
      port.postMessage(answer, [bytes.buffer]);
    } catch (error) {
      const answer: DrawingAnswer = { ok: false, why: String(error) };
      port.postMessage(answer);
    }
  });
}
