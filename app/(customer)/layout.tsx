import type { ReactNode } from 'react'
import { PublicShell } from '../_components/shell/public-shell'

export default function CustomerLayout({ children }: { children: ReactNode }) {
  return <PublicShell>{children}</PublicShell>
}
