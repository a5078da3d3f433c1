import { Tag } from '@/app/_components/tag/tag'
import { When } from '@/app/_components/ui/when'

type Hold = {
  readonly holdId: string
  readonly tag: string
  readonly jobNumber: string
  readonly reason: string
  readonly openedAt: Date
  readonly by: string
}

export function Held({ holds, zone, locale }: { holds: readonly Hold[]; zone: string; locale: string }) {
  return (
    <section className="part" aria-labelledby="held">
      <h2 id="held">On hold</h2>
      {holds.length === 0 ? (
        <p className="soft">No heads on hold.</p>
      ) : (
        <ul className="plain-list">
          {holds.map((hold) => (
            <li key={hold.holdId} className="row">
              <Tag number={hold.tag} href={`/t/${encodeURIComponent(hold.tag)}`} />
              <span>
                {hold.reason}{' '}
                <span className="soft">
                  {hold.by}, <When at={hold.openedAt} zone={zone} locale={locale} />, job {hold.jobNumber}
                </span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
