import type { Metadata, Viewport } from 'next'
import type { ReactNode } from 'react'
import { barlow, barlowCondensed, barlowMore } from './_components/fonts'
import './globals.css'

export const metadata: Metadata = {
  title: { default: 'Brasstag', template: '%s · Brasstag' },
  description: 'The working record of a cylinder-head shop, from the counter to the spec sheet.',
  icons: { icon: '/icon.svg' },
  robots: { index: false, follow: false },
  formatDetection: { telephone: false, date: false, address: false, email: false },
}

// A page made at build time could not carry the nonce that its scripts need.
export const dynamic = 'force-dynamic'

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f4f6f7' },
    { media: '(prefers-color-scheme: dark)', color: '#14181b' },
  ],
}

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en" className={`${barlow.variable} ${barlowCondensed.variable} ${barlowMore.variable}`}>
      <body>{children}</body>
    </html>
  )
}
