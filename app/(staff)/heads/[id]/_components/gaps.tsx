'use client'
import { Link } from '@/app/_components/ui/link'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextArea } from '@/app/_components/ui/text-area'
import { stepHref } from '@/app/(staff)/stations/step-href'
import { sameKey } from '@/lib/core/route/keys'
import type { Missing } from '@/lib/core/route/types'
import { waiveGapSchema } from '@/lib/schemas/visit'
import type { VisitView } from '@/lib/use-cases/heads/see-head'
import { waiveGapAction } from '../actions'
import { lackText } from '@/lib/words/lacks'

/** What stands between this head and its release, each in words with the way to mend it. */
export function Gaps({ visit, mayWaive }: { visit: VisitView; mayWaive: boolean }) {
  const [asking, setAsking] = useState<Missing | null>(null)
  if (visit.releases.length > 0 || visit.returned !== null) return null
  const confirmed = visit.readings.filter((line) => line.confirmed !== '')
  return (
    <section className="stack" aria-label="Before release">
      <h3>Before release</h3>
      {visit.gaps.length === 0 ? (
        <p>Nothing is missing. Ready to release.</p>
      ) : (
        <details open={visit.gaps.length <= 8}>
          <summary>{visit.gaps.length} things are missing</summary>
          <ul className="plain-list">
            {visit.gaps.map((gap) => (
              <li key={gap.gap} className="row spread">
                <span>
                  <Link href={stepHref(stationOf(visit, gap), visit.visitId, gap.step)}>{gap.label}</Link>:{' '}
                  {lackText(gap.lack)}
                </span>
                {mayWaive && gap.what !== 'hold' && gap.what !== 'finding' && (
                  <Button variant="quiet" onClick={() => setAsking(gap)} aria-label={`Waive: ${lackText(gap.lack)}`}>
                    Waive
                  </Button>
                )}
              </li>
            ))}
          </ul>
        </details>
      )}
      {confirmed.length > 0 && (
        <>
          <p>Unlikely readings that were typed twice:</p>
          <ul className="plain-list">
            {confirmed.map((line) => (
              <li key={line.id}>
                {line.label} {line.point}, {line.step.toLowerCase()}: {line.text}, {line.confirmed}
              </li>
            ))}
          </ul>
        </>
      )}
      <Dialog open={asking !== null} onClose={() => setAsking(null)} title="Waive with a reason">
        {asking && <WaiveForm visitId={visit.visitId} gap={asking} onDone={() => setAsking(null)} />}
      </Dialog>
    </section>
  )
}

const stationOf = (visit: VisitView, gap: Missing) =>
  visit.route.find((step) => sameKey(step, gap.step))?.station ?? 'measuring-bench'

function WaiveForm({ visitId, gap, onDone }: { visitId: string; gap: Missing; onDone: () => void }) {
  const form = useActionForm(waiveGapSchema, waiveGapAction, {
    defaultValues: { visitId, gap: gap.gap, reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Waive it">
      <p>
        {gap.label}: {lackText(gap.lack)}
      </p>
      <TextArea
        label="Why it may pass"
        hint="It prints on the job sheet and the spec sheet."
        required
        {...form.text('reason')}
      />
    </ActionForm>
  )
}
