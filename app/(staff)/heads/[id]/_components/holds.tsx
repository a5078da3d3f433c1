'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { PhotoStrip } from '@/app/_components/photo/photo-strip'
import { Choice } from '@/app/_components/ui/choice'
import { Notice } from '@/app/_components/ui/notice'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { decideHoldSchema } from '@/lib/schemas/visit'
import type { Shown } from '@/lib/use-cases/photos/see-photos'
import type { VisitView } from '@/lib/use-cases/heads/see-head'
import { decideHoldAction } from '../actions'

type Hold = VisitView['holds'][number]

type Props = { holds: readonly Hold[]; mayDecide: boolean; shown: Shown }

export function Holds({ holds, mayDecide, shown }: Props) {
  return (
    <>
      {holds.map((hold) =>
        hold.decision === null ? (
          <Notice key={hold.id} kind="stop" title="Held" live={false}>
            <p>
              {hold.reason} <span className="soft">({hold.by})</span>
            </p>
            <PhotoStrip
              photos={shown.photos.filter((photo) => photo.holdId === hold.id)}
              manner={shown}
              label="Photos of what is wrong"
            />
            {mayDecide ? <DecideForm hold={hold} /> : <p>The owner decides how it goes on.</p>}
          </Notice>
        ) : (
          <p key={hold.id} className="soft">
            Was held: {hold.reason}. Decided: {hold.decision.replaceAll('-', ' ')}, {hold.note}.
          </p>
        ),
      )}
    </>
  )
}

function DecideForm({ hold }: { hold: Hold }) {
  const form = useActionForm(decideHoldSchema, decideHoldAction, {
    defaultValues: { holdId: hold.id, version: hold.version, note: '', customerYes: '' },
  })
  return (
    <ActionForm form={form} submitLabel="Decide">
      <Choice
        label="How it goes on"
        options={[
          { value: 'use-as-is', label: 'Use as it is', hint: 'only with the customer’s yes' },
          { value: 'rework', label: 'Rework' },
          { value: 'return-as-is', label: 'Return as is' },
          { value: 'scrap', label: 'Scrap' },
        ]}
        {...form.text('decision')}
      />
      <TextInput label="The customer’s yes: who, when" required={false} {...form.text('customerYes')} />
      <TextArea label="Why" required rows={2} {...form.text('note')} />
    </ActionForm>
  )
}
