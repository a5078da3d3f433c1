import { cache } from 'react'
import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../../_components/page-head'
import { ReferenceForm } from './_components/reference-form'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => orNotFound(seeReferences(await requirePerson('reading.record-bench'), id)))

export async function generateMetadata({ params }: Props) {
  return { title: `Reference run: ${(await see((await params).id)).casting}` }
}

export default async function ReferencePage({ params }: Props) {
  const { id } = await params
  const { casting, fields } = await see(id)
  return (
    <>
      <PageHead up={[`/back-room/castings/${id}`, casting]} title={`Reference run of ${casting}`}>
        <p>
          Flow of a head of this casting that is not on a job. Heads of the casting can be compared with it; the
          comparison is always headed “different head”.
        </p>
      </PageHead>
      <ReferenceForm castingId={id} fields={fields} />
    </>
  )
}
