import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../../_components/back-link'
import { ReferenceForm } from './_components/reference-form'

export const metadata = { title: 'Reference run' }

export default async function ReferencePage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('reading.record-bench')
  const { casting, fields } = await orNotFound(seeReferences(actor, id))
  return (
    <>
      <div className="stack">
        <BackLink href={`/back-room/castings/${id}`}>{casting}</BackLink>
        <h1>Reference run of {casting}</h1>
        <p>
          The flow of a head of this casting that is on no job. Heads of the casting can be held against it, always
          headed “different head”.
        </p>
      </div>
      <ReferenceForm castingId={id} fields={fields} />
    </>
  )
}
