'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Choice } from '@/app/_components/ui/choice'
import { Dialog } from '@/app/_components/ui/dialog'
import { Table } from '@/app/_components/ui/table'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { When } from '@/app/_components/ui/when'
import { correctReferenceSchema } from '@/lib/schemas/flow'
import type { ReferenceLine, ReferenceRecord } from '@/lib/use-cases/flow/reference-records'
import type { ReferencesView } from '@/lib/use-cases/flow/see-references'
import type { ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { correctReferenceAction } from '../[id]/reference/actions'

type Asked = { readonly run: ReferenceRecord; readonly line: ReferenceLine | null }

/** The figures of each reference run, with what was corrected and withdrawn. */
export function ReferenceRecords({ references, manner }: { references: ReferencesView; manner: ShopLocale }) {
  const [asking, setAsking] = useState<Asked | null>(null)
  const { record, castingId, mayCorrect } = references
  return (
    <>
      {record.map((run, place) => (
        <details key={run.runId}>
          <summary>
            Figures of run {place + 1}, <When at={run.takenAt} zone={manner.timeZone} locale={manner.locale} />
            {run.withdrawn && ', withdrawn'}
          </summary>
          <Table
            label={`Reference run ${place + 1}`}
            columns={mayCorrect ? [...columns, { id: 'correct', label: 'Correct' }] : columns}
            rows={run.lines.map((line) => ({
              id: line.id,
              cells: cellsOf(line, () => setAsking({ run, line })),
            }))}
          />
          {mayCorrect && !run.withdrawn && (
            <Button onClick={() => setAsking({ run, line: null })}>Withdraw run {place + 1}</Button>
          )}
        </details>
      ))}
      <Dialog
        open={asking !== null}
        onClose={() => setAsking(null)}
        title={asking?.line ? 'Correct a lift' : 'Withdraw the run'}
      >
        {asking && <CorrectForm castingId={castingId} asked={asking} onDone={() => setAsking(null)} />}
      </Dialog>
    </>
  )
}

const columns = [
  { id: 'point', label: 'Port and lift', head: true },
  { id: 'value', label: 'Flow', figure: true },
  { id: 'before', label: 'Before', figure: true },
  { id: 'why', label: 'Reason, by' },
]

const cellsOf = (line: ReferenceLine, correct: () => void) => ({
  point: line.point,
  value: line.text,
  before: line.earlier.length === 0 ? '–' : line.earlier.join(', '),
  why: line.reason === '' ? line.by : `${line.reason} (${line.by})`,
  correct: line.withdrawn ? (
    ''
  ) : (
    <Button variant="quiet" onClick={correct} aria-label={`Correct ${line.point}`}>
      Correct
    </Button>
  ),
})

function CorrectForm({ castingId, asked, onDone }: { castingId: string; asked: Asked; onDone: () => void }) {
  const { run, line } = asked
  const form = useActionForm(correctReferenceSchema, correctReferenceAction, {
    defaultValues: {
      castingId,
      runId: run.runId,
      readingId: line?.id ?? null,
      correction: line ? 'replace' : 'withdraw',
      text: '',
      reason: '',
    },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel={line ? 'Correct' : 'Withdraw'}>
      {line ? (
        <>
          <p>
            {line.point} says <strong>{line.text}</strong>. It stays on record beside the correction.
          </p>
          <Choice
            label="What was wrong"
            options={[
              { value: 'replace', label: 'The figure' },
              { value: 'withdraw', label: 'The whole reading: withdraw it' },
            ]}
            {...form.text('correction')}
          />
          <TextInput label="What it should say" required={false} {...form.text('text')} />
        </>
      ) : (
        <p>Heads are no longer compared with this run. Its figures stay on record.</p>
      )}
      <TextArea label="Reason" required rows={2} {...form.text('reason')} />
    </ActionForm>
  )
}
