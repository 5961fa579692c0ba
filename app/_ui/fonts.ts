import localFont from 'next/font/local';

/** Text and numbers: told apart at arm's length, with a zero that is no letter. */
export const textFont = localFont({
  src: [
    {
      path: '../../node_modules/@expo-google-fonts/atkinson-hyperlegible-next/400Regular/AtkinsonHyperlegibleNext_400Regular.ttf',
      weight: '400',
      style: 'normal',
    },
    {
      path: '../../node_modules/@expo-google-fonts/atkinson-hyperlegible-next/600SemiBold/AtkinsonHyperlegibleNext_600SemiBold.ttf',
      weight: '600',
      style: 'normal',
    },
    {
      path: '../../node_modules/@expo-google-fonts/atkinson-hyperlegible-next/700Bold/AtkinsonHyperlegibleNext_700Bold.ttf',
      weight: '700',
      style: 'normal',
    },
  ],
  variable: '--font-atkinson',
  fallback: ['Verdana', 'sans-serif'],
  display: 'swap',
});

/** The lettering of the slate: titles, column heads, buttons. */
export const slateFont = localFont({
  src: [
    {
      path: '../../node_modules/@expo-google-fonts/barlow-condensed/500Medium/BarlowCondensed_500Medium.ttf',
      weight: '500',
      style: 'normal',
    },
    {
      path: '../../node_modules/@expo-google-fonts/barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold.ttf',
      weight: '600',
      style: 'normal',
    },
  ],
  variable: '--font-barlow',
  fallback: ['Arial Narrow', 'sans-serif'],
  display: 'swap',
});
