import { Link } from '@/app/_components/ui/link'
import type { ReactNode } from 'react'

type Props = {
  /** The page above: address and name. */
  up: readonly [href: string, name: string]
  title: string
  /** Buttons beside the heading. */
  action?: ReactNode
  /** Notes under the heading. */
  children?: ReactNode
}

export function PageHead({ up: [href, name], title, action, children }: Props) {
  return (
    <div className="stack">
      <nav aria-label="Up" className="no-print">
        <Link href={href}>{name}</Link>
      </nav>
      <div className="row spread">
        <h1>{title}</h1>
        {action}
      </div>
      {children}
    </div>
  )
}
