import type { Metadata } from 'next'
import { Link } from '@/app/_components/ui/link'
import { redirect } from 'next/navigation'
import { headAtStation } from '@/app/(staff)/stations/head-at-station'
import { HitLine } from '@/app/_components/shell/hit-line'
import { findSchema } from '@/lib/schemas/job'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import type { Station } from '@/lib/core/route/step-ids'
import { deviceStation, knownStation } from '@/lib/web/device-station'
import { requirePerson } from '@/lib/web/require-actor'
import styles from './find.module.css'

type Props = { searchParams: Promise<{ q?: string | string[]; at?: string | string[] }> }

const askedOf = async ({ searchParams }: Props): Promise<string> => {
  const { q } = await searchParams
  return typeof q === 'string' ? q : ''
}

/** Asked at a station, at the one that is named or at this device's; null: asked elsewhere. */
async function stationAsked({ searchParams }: Props): Promise<Station | null> {
  const { at } = await searchParams
  return typeof at === 'string' ? (knownStation(at) ?? (await deviceStation())) : null
}

export async function generateMetadata(props: Props): Promise<Metadata> {
  const q = (await askedOf(props)).trim()
  return { title: q === '' ? 'Find' : `Find “${q}”` }
}

/** What one box finds. Something's own name, typed or scanned whole, goes straight to it. */
export default async function FindPage(props: Props) {
  const q = await askedOf(props)
  const actor = await requirePerson('job.see')
  const input = findSchema.safeParse({ q })
  const found = await findAnything(actor, input.success ? input.data : { q: '' })
  if (found.headId !== null) redirect(await headAtStation(actor, found.headId, await stationAsked(props)))
  if (found.jump) redirect(found.jump)
  return (
    <>
      <h1>{q.trim() === '' ? 'Find' : `Results for “${q.trim()}”`}</h1>
      {found.hits.length === 0 ? (
        <p className="soft">
          {q.trim() !== '' && 'Nothing found. '}Type or scan a tag (T-0412 or 412), a job number (26-0117 or 26-117),
          words of a customer’s name in any order, part of a phone number, or a head’s stamp, casting or casting marks:
          at least two characters.
        </p>
      ) : (
        <ul className="plain-list">
          {found.hits.map((hit) => (
            <li key={hit.href}>
              <Link href={hit.href} className={styles.hit}>
                <HitLine hit={hit} locale={found.locale} />
              </Link>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}
