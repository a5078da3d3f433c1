import { ReferenceRecords } from './reference-records'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { When } from '@/app/_components/ui/when'
import type { ReferencesView } from '@/lib/use-cases/flow/see-references'
import type { ShopLocale } from '@/lib/use-cases/shop/shop-locale'

type Props = { references: ReferencesView; manner: ShopLocale }

/** Flow runs of the casting that belong to no job. */
export function ReferencesShown({ references, manner }: Props) {
  const { runs, castingId, mayRecord } = references
  return (
    <section className="part stack" aria-labelledby="references">
      <h2 id="references">Reference flow runs</h2>
      {runs.length === 0 ? (
        <p className="soft">No reference run yet. A new head can be compared with one.</p>
      ) : (
        <ul className="plain-list">
          {runs.map((run) => (
            <li key={run.id}>
              <When at={run.takenAt} zone={manner.timeZone} locale={manner.locale} style="date" />: {run.ports},{' '}
              {run.by}
              {run.conditions !== '' && `. ${run.conditions}`}
            </li>
          ))}
        </ul>
      )}
      <ReferenceRecords references={references} manner={manner} />
      {mayRecord && (
        <div>
          <ButtonLink href={`/back-room/castings/${castingId}/reference`}>Record a reference run</ButtonLink>
        </div>
      )}
    </section>
  )
}
