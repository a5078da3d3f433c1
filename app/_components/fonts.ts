import localFont from 'next/font/local'

// The same files that are set into the papers, so that a figure looks the same on screen and on paper.
export const barlow = localFont({
  src: [
    {
      path: '../../node_modules/@expo-google-fonts/barlow/400Regular/Barlow_400Regular.ttf',
      weight: '400',
      style: 'normal',
    },
    {
      path: '../../node_modules/@expo-google-fonts/barlow/600SemiBold/Barlow_600SemiBold.ttf',
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
      path: '../../node_modules/@expo-google-fonts/barlow-condensed/600SemiBold/BarlowCondensed_600SemiBold.ttf',
      weight: '600',
      style: 'normal',
    },
  ],
  variable: '--font-barlow-condensed',
  display: 'swap',
})
