import localFont from 'next/font/local'

// The faces of the papers, compressed for the web and cut in two: what a page of English needs is fetched with the page,
// the letters of other languages (Ł, ő, ş) only where one stands on it.
export const barlow = localFont({
  src: [
    {
      path: '../../node_modules/@fontsource/barlow/files/barlow-latin-400-normal.woff2',
      weight: '400',
      style: 'normal',
    },
    {
      path: '../../node_modules/@fontsource/barlow/files/barlow-latin-600-normal.woff2',
      weight: '600',
      style: 'normal',
    },
  ],
  variable: '--font-barlow',
  display: 'swap',
})

export const barlowCondensed = localFont({
  src: [
    {
      path: '../../node_modules/@fontsource/barlow-condensed/files/barlow-condensed-latin-600-normal.woff2',
      weight: '600',
      style: 'normal',
    },
  ],
  variable: '--font-barlow-condensed',
  display: 'swap',
})

/** As the packages' own style sheets have it. Loaders of faces take it as it stands here, not from a constant. */
export const barlowMore = localFont({
  src: [
    {
      path: '../../node_modules/@fontsource/barlow/files/barlow-latin-ext-400-normal.woff2',
      weight: '400',
      style: 'normal',
    },
    {
      path: '../../node_modules/@fontsource/barlow/files/barlow-latin-ext-600-normal.woff2',
      weight: '600',
      style: 'normal',
    },
  ],
  declarations: [
    {
      prop: 'unicode-range',
      value:
        'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
    },
  ],
  variable: '--font-barlow-more',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
})
