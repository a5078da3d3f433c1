import { Suspense } from 'react'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Loading } from '@/app/_components/ui/loading'
import { Pager } from '@/app/_components/ui/pager'
import type { Actor } from '@/lib/core/access/roles'
import { seeBackupLine } from '@/lib/use-cases/backup/see-backups'
import { seeBackRoom } from '@/lib/use-cases/back-room/see-back-room'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { BackupLine } from './_components/backup-line'
import { Held } from './_components/held'
import { Missed } from './_components/missed'
import { Waits } from './_components/waits'
import { Waivers } from './_components/waivers'
import styles from './back-room.module.css'

export const metadata = { title: 'Back room' }

const rooms = [
  { href: '/back-room/castings', label: 'Casting records' },
  { href: '/back-room/vendors', label: 'Vendors' },
  { href: '/back-room/prices', label: 'Prices' },
  { href: '/back-room/taxes', label: 'Tax' },
  { href: '/back-room/bookkeeper', label: 'For the bookkeeper' },
  { href: '/back-room/people', label: 'People' },
  { href: '/back-room/tablets', label: 'Tablets' },
  { href: '/back-room/messages', label: 'Messages' },
  { href: '/back-room/settings', label: 'Limits and tolerances' },
  { href: '/back-room/steps', label: 'Steps and stations' },
  { href: '/back-room/instruments', label: 'Instruments' },
  { href: '/back-room/shop', label: 'The shop' },
  { href: '/back-room/backup', label: 'Backup' },
  { href: '/back-room/trail', label: 'Audit trail' },
]

export default async function BackRoomPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('back-room.see')
  return (
    <>
      <h1>Back room</h1>
      <nav aria-label="Back room">
        <ul className={`row ${styles.rooms}`}>
          {rooms.map(({ href, label }) => (
            <li key={href}>
              <ButtonLink href={href}>{label}</ButtonLink>
            </li>
          ))}
        </ul>
      </nav>
      <Suspense fallback={<Loading />}>
        <State actor={actor} page={page} />
      </Suspense>
    </>
  )
}

/** What waits, what is held, and what went wrong this month. */
async function State({ actor, page }: { actor: Actor; page: number }) {
  const now = new Date()
  const newest = await newestChange()
  const seen = await seeBackRoom(actor, now, page)
  const backup = await seeBackupLine(actor, now)
  return (
    <>
      <AutoRefresh newest={newest} />
      <BackupLine line={backup} />
      <Waits loads={seen.loads} now={now} />
      <Held holds={seen.holds} zone={seen.zone} locale={seen.locale} />
      <Waivers waivers={seen.waivers} zone={seen.zone} locale={seen.locale} />
      <Missed readings={seen.outOfTolerance} zone={seen.zone} locale={seen.locale} />
      <Pager page={page} more={seen.more} href={(to) => `/back-room?page=${to}`} />
    </>
  )
}
