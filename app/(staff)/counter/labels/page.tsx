import { Link } from '@/app/_components/ui/link'
import type { Metadata } from 'next'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Notice } from '@/app/_components/ui/notice'
import { seeLabelHeads } from '@/lib/use-cases/papers/see-label-heads'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { pageOf } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { LabelPicker } from './_components/label-picker'
import { mostAdded } from '@/app/_components/papers/labels-href'

export const metadata: Metadata = { title: 'Tag labels' }

type Props = { searchParams: Promise<{ tag?: string | string[]; page?: string | string[] }> }

/** Labels for heads of several jobs at once. `tag`: heads that were typed or scanned besides those in the list. */
export default async function LabelsPage({ searchParams }: Props) {
  const asked = await searchParams
  const tags = [asked.tag ?? []].flat().slice(0, mostAdded)
  const page = pageOf(asked.page)
  const actor = await requirePerson('paper.print')
  const newest = await newestChange()
  const view = await seeLabelHeads(actor, { tags, page }, new Date())
  return (
    <>
      <AutoRefresh newest={newest} />
      <h1>Tag labels</h1>
      {view.without.length > 0 && (
        <Notice kind="caution" title="No label for">
          {view.without.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Notice>
      )}
      {view.heads.length + view.added.length === 0 && (
        <p className="soft">
          No tagged heads in house. A head gets its tag when its job is booked:{' '}
          <Link href="/counter/book">book a job</Link>.
        </p>
      )}
      <LabelPicker view={view} page={page} />
    </>
  )
}
