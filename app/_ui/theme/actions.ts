'use server';

import { cookies } from 'next/headers';
import { THEME_COOKIE, themeFrom } from './theme';

/** Keeps the chosen theme for a year; the page that sent the form is shown again in it. */
export async function setTheme(form: FormData): Promise<void> {
  const jar = await cookies();
  jar.set(THEME_COOKIE, themeFrom(form.get('theme')), {
    maxAge: 31_536_000,
    sameSite: 'lax',
    path: '/',
  });
}
