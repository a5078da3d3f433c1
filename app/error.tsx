'use client'
import { PageError, type PageErrorProps } from './_components/shell/page-error'
import { PublicShell } from './_components/shell/public-shell'

export default function RootError(props: PageErrorProps) {
  return (
    <PublicShell narrow>
      <PageError {...props} advice="Everything saved before is safe. Try again. If it happens twice, tell the owner." />
    </PublicShell>
  )
}
