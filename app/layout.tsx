import type { Metadata, Viewport } from 'next';
import Link from 'next/link';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import { slateFont, textFont } from './_ui/fonts';
import { NotAtTheDoor } from './_ui/not-at-the-door';
import { PageNav } from './_ui/page-nav';
import { DAY, NIGHT, paletteCss } from './_ui/palette';
import { Shortcuts } from './_ui/shortcuts/shortcuts';
import { THEME_COOKIE, themeFrom } from './_ui/theme/theme';
import { ThemeSwitch } from './_ui/theme/theme-switch';
import './globals.css';

export const metadata: Metadata = {
  title: { default: 'Scale & Slate', template: '%s · Scale & Slate' },
  description: 'From weighed ingredients to a filmed and published episode.',
};

export const viewport: Viewport = {
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: DAY.paper },
    { media: '(prefers-color-scheme: dark)', color: NIGHT.paper },
  ],
};

/** Frame of every page: skip link, navigation, `main`. Pages render what stands inside `main`. */
export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const theme = themeFrom((await cookies()).get(THEME_COOKIE)?.value);
  return (
    <html
      lang="en"
      data-theme={theme === 'device' ? undefined : theme}
      className={`${textFont.variable} ${slateFont.variable}`}
    >
      <head>
        <style>{paletteCss()}</style>
      </head>
      <body>
        <a
          href="#main"
          className="absolute -top-24 left-4 z-50 bg-ink px-4 py-3 text-paper focus:top-0"
        >
          Skip to the page
        </a>
        <div className="mx-auto max-w-[86rem] px-4 md:px-8 print:max-w-none print:px-0">
          <header>
            <PageNav />
          </header>
          <main id="main" tabIndex={-1} className="outline-none">
            {children}
          </main>
          <footer className="mt-16 flex flex-wrap items-center gap-x-8 gap-y-2 border-t border-line py-4 text-fine print:hidden">
            <NotAtTheDoor>
              <ThemeSwitch theme={theme} />
              <Shortcuts />
              <Link href="/changes" className="link inline-flex min-h-11 items-center">
                What changed
              </Link>
              <Link href="/corrections" className="link inline-flex min-h-11 items-center">
                Corrections
              </Link>
              <Link href="/phones" className="link inline-flex min-h-11 items-center">
                Phones
              </Link>
            </NotAtTheDoor>
            <p className="text-soft">Figures are for information, not dietary or medical advice.</p>
          </footer>
        </div>
      </body>
    </html>
  );
}
