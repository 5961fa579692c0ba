/** By day, in the kitchen at night, or as the device asks. */
export const THEMES = ['device', 'day', 'night'] as const;
export type Theme = (typeof THEMES)[number];

export const THEME_COOKIE = 'theme';

/** The theme that a cookie or a form field names; anything else is 'device'. */
export function themeFrom(text: unknown): Theme {
  return THEMES.find((theme) => theme === text) ?? 'device';
}
