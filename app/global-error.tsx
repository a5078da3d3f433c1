'use client'
import { barlow, barlowCondensed, barlowMore } from './_components/fonts'
import { PageError, type PageErrorProps } from './_components/shell/page-error'
import { PublicShell } from './_components/shell/public-shell'
import './globals.css'

/** Stands in for the whole document when the frame itself fails. */
export default function GlobalError(props: PageErrorProps) {
  return (
    <html lang="en" className={`${barlow.variable} ${barlowCondensed.variable} ${barlowMore.variable}`}>
      <body>
        <title>Page could not be shown · Brasstag</title>
        <PublicShell narrow>
          <PageError
            {...props}
            advice="Everything saved before is safe. Try again. If it happens twice, tell the owner."
          />
        </PublicShell>
      </body>
    </html>
  )
}
