import { seeReferences } from '@/lib/use-cases/flow/see-references'
import { entryPage } from '../../../_components/entry-page'
import { PageHead } from '../../../_components/page-head'
import { ReferenceForm } from './_components/reference-form'

const page = entryPage('reading.record-bench', seeReferences, ({ casting }) => `Reference run: ${casting}`)

export const generateMetadata = page.generateMetadata

export default async function ReferencePage(props: Parameters<typeof page.see>[0]) {
  const { castingId, casting, fields } = await page.see(props)
  return (
    <>
      <PageHead up={[`/back-room/castings/${castingId}`, casting]} title={`Reference run of ${casting}`}>
        <p>
          Flow of a head of this casting that is not on a job. Heads of the casting can be compared with it; the
          comparison is always headed “different head”.
        </p>
      </PageHead>
      <ReferenceForm castingId={castingId} fields={fields} />
    </>
  )
}
