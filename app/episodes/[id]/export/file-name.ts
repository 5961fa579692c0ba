/**
 * A file name from a title: plain letters, digits and hyphens, which every system and header takes.
 * `fileName('Æbler & skyr, bagt')` → `'bler-skyr-bagt.episode.json'`.
 */
export function fileName(title: string, ending = 'episode.json'): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-/, '')
    .slice(0, 60)
    .replace(/-$/, '');
  return `${plain || 'episode'}.${ending}`;
}
