import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { HitLine } from '@/app/_components/shell/hit-line'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { findSchema } from '@/lib/schemas/job'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { requirePerson } from '@/lib/web/require-actor'
import styles from './find.module.css'

export const metadata: Metadata = { title: 'Find' }

type Props = { searchParams: Promise<{ q?: string | string[] }> }

/** What one box finds. Something's own name, typed or scanned whole, goes straight to it. */
export default async function FindPage({ searchParams }: Props) {
  const asked = (await searchParams).q
  const q = typeof asked === 'string' ? asked : ''
  const actor = await requirePerson('job.see')
  const input = findSchema.safeParse({ q })
  const found = await findAnything(actor, input.success ? input.data : { q: '' })
  if (found.jump) redirect(found.jump)
  return (
    <>
      <h1>{q.trim() === '' ? 'Find' : `Found for “${q.trim()}”`}</h1>
      {found.hits.length === 0 ? (
        <EmptyState title={q.trim() === '' ? 'Nothing asked yet' : 'Nothing found'}>
          <p>
            Type or scan a tag (T-0412), a job number (26-0117), part of a customer’s name or phone number, or a head’s
            own stamp or casting marks. At least two letters or figures.
          </p>
        </EmptyState>
      ) : (
        <ul className="plain-list">
          {found.hits.map((hit) => (
            <li key={hit.href}>
              <Link href={hit.href} className={styles.hit}>
                <HitLine hit={hit} />
              </Link>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}
