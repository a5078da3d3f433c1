import type { ReactNode } from 'react'
import { PublicShell } from '../_components/shell/public-shell'

export default function SignInLayout({ children }: { children: ReactNode }) {
  return <PublicShell narrow>{children}</PublicShell>
}
