import { Link } from '@/app/_components/ui/link'
import { benchFromQuery } from '@/lib/schemas/bench-question'
import { seeBench } from '@/lib/use-cases/cut-bench/see-bench'
import { orNotFound } from '@/lib/web/or-not-found'
import { queryOf, type SearchParams } from '@/lib/web/query-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Bench } from './_components/bench'

export const metadata = { title: 'Cut bench' }

type Props = { searchParams: Promise<SearchParams> }

export default async function CutBenchPage({ searchParams }: Props) {
  const actor = await requirePerson('cut-bench.see')
  const query = queryOf(await searchParams)
  const asked = benchFromQuery(query)
  const view = await orNotFound(seeBench(actor, asked.castingId, query.get('customer') ?? ''))
  const castingId = asked.castingId === '' ? (view.casting?.id ?? '') : asked.castingId
  return (
    <>
      <Bench view={view} initial={{ ...asked, castingId }} />
      {view.kept.length > 0 && (
        <section className="part" aria-label="Saved estimates">
          <h2>Saved estimates</h2>
          <ul className="plain-list">
            {view.kept.map(({ id, number, forWhom, title }) => (
              <li key={id}>
                <Link href={`/cut-bench/kept/${id}`}>{number}</Link> for {forWhom}: {title}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}
