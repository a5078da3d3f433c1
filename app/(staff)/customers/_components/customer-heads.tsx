import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import type { CustomerView } from '@/lib/use-cases/customers/see-customer'

/** Every head that was ever brought on these jobs, also those that came again in another name. */
export function CustomerHeads({ customer: { heads } }: { customer: CustomerView }) {
  return (
    <section aria-label="Heads">
      <h2>Heads brought</h2>
      {heads.length === 0 ? (
        <p className="soft">No heads yet.</p>
      ) : (
        <ul className="plain-list">
          {heads.map(({ headId, tag, stamp, marks, casting, whereabouts, lastJob, movedTo }) => (
            <li key={headId} className="row">
              {tag === '' ? (
                <Link href={`/heads/${headId}`}>no tag</Link>
              ) : (
                <Tag number={tag} size="s" href={`/heads/${headId}`} />
              )}
              <span>{[stamp, marks, casting].filter(Boolean).join(', ')}</span>
              <span className="soft">
                {whereabouts}
                {movedTo !== '' && `, last brought by ${movedTo} on job ${lastJob}`}
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
