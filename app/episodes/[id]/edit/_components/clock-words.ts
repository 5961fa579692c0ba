import { printRuntime } from '#lib/units/print';

const SECOND = 1000;

/** A time in the edit as it is read. `clockWords(190_400)` → `'3:10'` */
export function clockWords(ms: number): string {
  return printRuntime((ms - (ms % SECOND)) / SECOND);
}
