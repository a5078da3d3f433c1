import type { ReactNode } from 'react'
import { StaffShell } from '../_components/shell/staff-shell'
import { currentSession, signedIn } from '@/lib/web/require-actor'

/** Not rendered again from page to page: each page asks for its own right. */
export default async function StaffLayout({ children }: { children: ReactNode }) {
  const actor = await signedIn()
  return (
    <StaffShell actor={actor} tablet={(await currentSession())?.tablet ?? null}>
      {children}
    </StaffShell>
  )
}
