import { printRuntime } from '#lib/units/print';
import type { From, FromKind } from './draft';

const NAMES: Readonly<Record<FromKind, string>> = {
  captions: 'captions',
  description: 'description',
  title: 'title',
  recipeData: 'recipe data',
};

/** Where a part of a draft was read, in words. `fromWords(from)` → 'captions at 1:12, line 30' */
export function fromWords({ text, line, startMs }: From): string {
  const at = startMs === null ? '' : ` at ${printRuntime(Math.floor(startMs / 1000))}`;
  return text === 'title' ? NAMES[text] : `${NAMES[text]}${at}, line ${line}`;
}
