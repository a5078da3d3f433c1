import { notFound } from 'next/navigation'
import { z } from 'zod'
import { seeRules } from '@/lib/use-cases/rules/see-rules'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { RestoreForm } from '../_components/restore-form'

export const metadata = { title: 'Steps as they were' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export default async function RestorePage({ searchParams }: Props) {
  const actor = await requirePerson('settings.change')
  const { version } = await seeRules(actor)
  const asked = z.coerce
    .number()
    .int()
    .min(0)
    .max(version)
    .safeParse((await searchParams).to)
  if (!asked.success) notFound()
  return (
    <>
      <PageHead up={['/back-room/steps', 'Steps and stations']} title="Steps as they were">
        <p className="soft">
          {asked.data === 0
            ? 'Steps and stations go back to what every shop starts with.'
            : `Steps and stations go back to version ${asked.data}.`}{' '}
          Limits stay. A step added since then is kept, no longer used.
        </p>
      </PageHead>
      <RestoreForm version={version} to={asked.data} />
    </>
  )
}
