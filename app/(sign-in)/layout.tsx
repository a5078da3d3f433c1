import type { ReactNode } from 'react'

/** Each page has its own frame: the rack of a tablet takes the whole screen. */
export default function SignInLayout({ children }: { children: ReactNode }) {
  return children
}
