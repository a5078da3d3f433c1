import Link from 'next/link'

/** Where this page hangs, above its heading. */
export function BackLink({ href, children }: { href: string; children: string }) {
  return (
    <nav aria-label="Up" className="no-print">
      <Link href={href}>{children}</Link>
    </nav>
  )
}
