'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextArea } from '@/app/_components/ui/text-area'
import { releaseVisitSchema } from '@/lib/schemas/release'
import { returnAsIsSchema } from '@/lib/schemas/visit'
import type { HeadView, VisitView } from '@/lib/use-cases/heads/see-head'
import { releaseVisitAction, returnAsIsAction } from '../actions'
import { lackText } from '@/lib/words/lacks'

type Props = { visit: VisitView; may: HeadView['may'] }

/** The two ways out: released, and returned as is. */
export function WaysOut({ visit, may }: Props) {
  const [open, setOpen] = useState<'release' | 'return' | null>(null)
  if (visit.returned !== null) return null
  const first = visit.releases.length === 0
  return (
    <div className="row">
      {may.release && (first || visit.correctedSinceRelease) && (
        <Button variant="main" onClick={() => setOpen('release')}>
          {first ? 'Release' : `Release again as revision ${visit.releases.length + 1}`}
        </Button>
      )}
      {may.returnAsIs && visit.handedOver === null && <Button onClick={() => setOpen('return')}>Return as is</Button>}
      <Dialog
        open={open === 'release'}
        onClose={() => setOpen(null)}
        title={first ? 'Release this head' : 'Release again'}
      >
        <ReleaseForm visit={visit} first={first} onDone={() => setOpen(null)} />
      </Dialog>
      <Dialog open={open === 'return'} onClose={() => setOpen(null)} title="Return as is">
        <ReturnForm visit={visit} onDone={() => setOpen(null)} />
      </Dialog>
    </div>
  )
}

type FormProps = { visit: VisitView; onDone: () => void }

function ReleaseForm({ visit, first, onDone }: FormProps & { first: boolean }) {
  const form = useActionForm(releaseVisitSchema, releaseVisitAction, {
    defaultValues: { visitId: visit.visitId, version: visit.version, reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Release it">
      <p>The spec sheet is frozen as it stands now. A correction afterwards makes a new revision and keeps this one.</p>
      {visit.gaps.length > 0 && (
        <ul>
          {visit.gaps.map((gap) => (
            <li key={gap.gap}>
              {gap.label}: {lackText(gap.lack)}
            </li>
          ))}
        </ul>
      )}
      {!first && <TextArea label="What this revision corrects" required rows={2} {...form.text('reason')} />}
    </ActionForm>
  )
}

function ReturnForm({ visit, onDone }: FormProps) {
  const form = useActionForm(returnAsIsSchema, returnAsIsAction, {
    defaultValues: { visitId: visit.visitId, reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Return it as it is">
      <p>Work stops here. The paper lists what was not done.</p>
      <TextArea label="Why it goes back" required rows={2} {...form.text('reason')} />
    </ActionForm>
  )
}
