import type { ReactNode } from 'react'
import { StaffShell } from '../_components/shell/staff-shell'
import { signedIn } from '@/lib/web/require-actor'

/** Not rendered again from page to page: each page asks for its own right. */
export default async function StaffLayout({ children }: { children: ReactNode }) {
  return <StaffShell actor={await signedIn()}>{children}</StaffShell>
}
