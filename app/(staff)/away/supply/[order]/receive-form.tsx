'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/check-list'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import { receiveSupplySchema } from '@/lib/schemas/supply'
import type { SupplyPage } from '@/lib/use-cases/supply/see-supply'
import { receiveSupplyAction } from '../../actions'

/** What came, all of it or part: each head gets its tag here, and parts are counted. */
export function ReceiveForm({ order }: { order: SupplyPage }) {
  const heads = order.lines.flatMap((line) =>
    line.kind === 'head' ? line.for.filter((head) => !head.here).map((head) => ({ ...head, what: line.what })) : [],
  )
  const parts = order.lines.filter((line) => line.kind === 'part' && line.arrived < line.quantity)
  const form = useActionForm(receiveSupplySchema, receiveSupplyAction, {
    defaultValues: {
      orderId: order.orderId,
      version: order.version,
      heads: heads.map((head) => ({ visitId: head.visitId, tag: '' })),
      parts: parts.map((line) => ({ lineId: line.lineId, quantity: String(line.quantity - line.arrived) })),
    },
  })
  const { setValue, watch } = form.form
  const came = watch('heads')
  const ids = came.map((head) => head.visitId)
  return (
    <section className="stack part" aria-label="What came">
      <h2>What came</h2>
      <ActionForm form={form} submitLabel="It is here">
        {heads.length > 0 && (
          <CheckList
            label="Heads that came"
            name="came"
            values={ids}
            onChange={(event) =>
              setValue(
                'heads',
                toggled(ids, event.target).map(
                  (id) => came.find((head) => head.visitId === id) ?? { visitId: id, tag: '' },
                ),
              )
            }
            options={heads.map((head) => ({
              value: head.visitId,
              label: `${head.what} for ${head.tag}${head.pulled ? ' (off its job: it lies here for another)' : ''}`,
            }))}
          />
        )}
        {came.length > 0 && (
          <div className="columns">
            {came.map((head, at) => (
              <TextInput
                key={head.visitId}
                label={`Tag of ${heads.find((entry) => entry.visitId === head.visitId)?.tag ?? ''}`}
                hint={at === 0 ? `Empty: the next number, ${order.nextTag}.` : 'Empty: the one after.'}
                required={false}
                autoComplete="off"
                autoCapitalize="characters"
                {...form.text(`heads.${at}.tag`)}
              />
            ))}
          </div>
        )}
        {parts.map((line, at) => (
          <TextInput
            key={line.lineId}
            label={`How many came: ${line.what}`}
            hint={`${line.quantity - line.arrived} are still to come.`}
            required={false}
            inputMode="numeric"
            {...form.text(`parts.${at}.quantity`)}
          />
        ))}
      </ActionForm>
    </section>
  )
}
