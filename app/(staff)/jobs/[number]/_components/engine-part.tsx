import { DefinitionList } from '@/app/_components/ui/definition-list'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { ChangeEngine } from './openers'

const layouts = { inline: 'inline', v: 'V', unknown: '' }
const cams = {
  yes: 'cam in the head',
  no: 'cam in the block',
  unknown: '',
  'side-valve': 'cam and valves in the block',
}

export function EnginePart({ job }: { job: JobView }) {
  const { engine } = job
  const kind = [engine.label, layouts[engine.layout], cams[engine.camInHead]].filter(Boolean).join(', ')
  const known = engine.figures.map(({ label, text, unit }) => ({ label, value: typedFigure({ text, unit }) }))
  return (
    <section className="part" aria-label="Engine">
      <h2>Engine</h2>
      {kind !== '' && <p>{kind}</p>}
      {known.length > 0 ? (
        <DefinitionList close items={known} />
      ) : (
        <p className="soft">No figures known. Compression, piston-to-valve and intake figures need them.</p>
      )}
      {job.may.change && <ChangeEngine jobId={job.id} jobNumber={job.number} version={job.version} engine={engine} />}
    </section>
  )
}
