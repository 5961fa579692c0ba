/**
 * A title as a part of a file's name: plain letters, digits and hyphens, which every system and header takes; empty where
 * nothing of it is left.
 * @example plainName('Æbler & skyr, bagt') // 'bler-skyr-bagt'
 */
export function plainName(title: string): string {
  return title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-/, '')
    .slice(0, 60)
    .replace(/-$/, '');
}
