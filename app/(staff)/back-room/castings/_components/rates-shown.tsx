import { Link } from '@/app/_components/ui/link'
import { CutRuling } from '@/app/_components/head/cut-ruling'
import { Notice } from '@/app/_components/ui/notice'
import { Table } from '@/app/_components/ui/table'
import type { CutOfRate, RateOfForm } from '@/lib/use-cases/castings/see-rates'
import { ruleOnCutAction } from '../actions'
import { formLabels } from './groups'

const columns = [
  { id: 'tag', label: 'Head', head: true },
  { id: 'job', label: 'Job' },
  { id: 'depth', label: 'Depth at the chamber', figure: true },
  { id: 'took', label: 'Took', figure: true },
  { id: 'rate', label: 'Thou per cc', figure: true },
  { id: 'counted', label: 'Counted' },
]
const rulingColumn = { id: 'ruling', label: 'The owner’s decision' }

const rowOf = ({ visitId, headId, tag, jobNumber, depthThou, tookCc, whyNot, verdict, ruling }: CutOfRate) => ({
  id: visitId,
  cells: {
    tag: (
      <Link className="nowrap" href={`/heads/${headId}`}>
        {tag}
      </Link>
    ),
    job: (
      <Link className="nowrap" href={`/jobs/${jobNumber}`}>
        {jobNumber}
      </Link>
    ),
    depth: depthThou === null ? '' : `${depthThou.toFixed(1)} thou`,
    took: tookCc === null ? '' : `${tookCc.toFixed(2)} cc`,
    rate: depthThou === null || tookCc === null || tookCc <= 0 ? '' : (depthThou / tookCc).toFixed(2),
    ruling: depthThou === null ? '' : <CutRuling visitId={visitId} ruling={ruling} action={ruleOnCutAction} />,
    counted: [verdict === 'counted' ? 'yes' : 'no', whyNot].filter(Boolean).join(': '),
  },
})

/** What the shop's own cuts of a casting taught, by chamber form, with the cuts themselves. */
export function RatesShown({ rates, mayRule }: { rates: readonly RateOfForm[]; mayRule: boolean }) {
  if (rates.length === 0) {
    return (
      <section className="part" aria-labelledby="rate">
        <h2 id="rate">Rate from our own cuts</h2>
        <p className="soft">
          No head of this casting has been cut yet. Each cut with cc before and after teaches the rate.
        </p>
      </section>
    )
  }
  return rates.map(({ form, rate, doubted, cuts }) => (
    <section key={form} className="part stack" aria-labelledby={`rate-${form}`}>
      <h2 id={`rate-${form}`}>Rate from our own cuts, chamber {formLabels[form]}</h2>
      <p>
        <span className="figure-large">{rate.thouPerCc.toFixed(2)}</span> thou per cc ±{' '}
        {(rate.uPart * rate.thouPerCc).toFixed(2)}, {rate.words}.{' '}
        {rate.proven
          ? 'A mild flat cut may go to size without a stop.'
          : 'Not proven yet: a flat cut is read at a stop on the way.'}
      </p>
      {doubted && (
        <Notice kind="caution" title="This record is in doubt" live={false}>
          <p>
            More than half of the newest cuts disagree with the opening on record. Check the outline or the perimeter.
            Until a new cut agrees, a first pass goes at most half the way.
          </p>
        </Notice>
      )}
      <Table
        label={`Cuts behind the rate, chamber ${formLabels[form]}`}
        columns={mayRule ? [...columns, rulingColumn] : columns}
        rows={cuts.map(rowOf)}
      />
    </section>
  ))
}
