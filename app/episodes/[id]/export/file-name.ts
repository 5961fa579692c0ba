import { plainName } from '#lib/units/plain-name';

/** A file name from a title. `fileName('Æbler & skyr, bagt')` → `'bler-skyr-bagt.episode.json'`. */
export function fileName(title: string, ending = 'episode.json'): string {
  return `${plainName(title) || 'episode'}.${ending}`;
}
