import { Link } from '@/app/_components/ui/link'
import { z } from 'zod'
import { Button } from '@/app/_components/ui/button'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { When } from '@/app/_components/ui/when'
import { isDay } from '@/lib/core/shop/calendar'
import { seeTrail, type Trail, type TrailLine } from '@/lib/use-cases/back-room/see-trail'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../_components/page-head'
import styles from './trail.module.css'

export const metadata = { title: 'Audit trail' }

/** A mistyped address shows the newest entries rather than an error. */
const asked = z.object({
  find: z.string().max(100).catch(''),
  personId: z.union([z.literal(''), z.uuid()]).catch(''),
  from: z.string().refine(isDay).catch(''),
  to: z.string().refine(isDay).catch(''),
  before: z.coerce.number().int().positive().nullable().catch(null),
})

export default async function TrailPage({ searchParams }: { searchParams: Promise<object> }) {
  const actor = await requirePerson('back-room.see')
  const { before, ...only } = asked.parse(await searchParams)
  const trail = await seeTrail(actor, { ...only, before })
  const isNarrow = Object.values(only).some((value) => value !== '')
  return (
    <>
      <PageHead up={['/back-room', 'Back room']} title="Audit trail">
        <p className="soft">Who changed what, newest first. Nobody can change or delete an entry.</p>
      </PageHead>
      <form method="get" role="search" aria-label="In the audit trail" className="stack">
        <TextInput
          label="Search"
          name="find"
          defaultValue={only.find}
          hint="A tag, a job number, a name, or what was done: hold, ticked, price line"
          autoComplete="off"
        />
        <Select
          label="Done by"
          name="personId"
          required={false}
          empty="Everyone"
          defaultValue={only.personId}
          options={trail.people.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <TextInput label="From" name="from" type="date" required={false} defaultValue={only.from} />
        <TextInput label="To" name="to" type="date" required={false} defaultValue={only.to} />
        <div className="row">
          <Button type="submit">Search</Button>
          {isNarrow && <ButtonLink href="/back-room/trail">Show all</ButtonLink>}
        </div>
      </form>
      <Lines trail={trail} isNarrow={isNarrow} />
      {trail.next !== null && (
        <div>
          <ButtonLink href={`/back-room/trail?${new URLSearchParams({ ...only, before: String(trail.next) })}`}>
            Older
          </ButtonLink>
        </div>
      )}
    </>
  )
}

function Lines({ trail, isNarrow }: { trail: Trail; isNarrow: boolean }) {
  if (trail.lines.length === 0) {
    return (
      <p className="soft">
        {isNarrow ? 'No match. Enter a whole tag or job number, or part of a name.' : 'No entries yet.'}
      </p>
    )
  }
  return (
    <ol aria-label="Audit trail" className="plain-list">
      {trail.lines.map((line) => (
        <li key={line.seq} className={styles.line}>
          <div>
            <When at={line.at} zone={trail.zone} locale={trail.locale} />
            <div className="soft">{line.by}</div>
          </div>
          <div>
            <strong>{line.sentence}</strong>
            <Subject line={line} />
          </div>
          <Changes changes={line.changes} />
        </li>
      ))}
    </ol>
  )
}

function Subject({ line }: { line: TrailLine }) {
  return (
    <span className="row">
      {line.tag && <Link href={`/t/${encodeURIComponent(line.tag)}`}>{line.tag}</Link>}
      {line.jobNumber && <Link href={`/jobs/${encodeURIComponent(line.jobNumber)}`}>{line.jobNumber}</Link>}
    </span>
  )
}

/** Three at once; the rest on asking: adding a casting names forty figures. */
function Changes({ changes }: { changes: readonly string[] }) {
  const [first, rest] = [changes.slice(0, 3), changes.slice(3)]
  return (
    <div className={styles.changes}>
      {first.map((change) => (
        <div key={change}>{change}</div>
      ))}
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more</summary>
          {rest.map((change) => (
            <div key={change}>{change}</div>
          ))}
        </details>
      )}
    </div>
  )
}
