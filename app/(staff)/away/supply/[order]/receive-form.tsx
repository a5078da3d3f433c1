'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import { receiveSupplySchema } from '@/lib/schemas/supply'
import type { SupplyPage } from '@/lib/use-cases/supply/see-supply'
import { receiveSupplyAction } from '../../actions'

/** All of an order or part of it: each head gets its tag here, and parts are counted. */
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
    <section className="stack part" aria-label="Receive">
      <h2>Receive</h2>
      <ActionForm form={form} submitLabel="Receive">
        {heads.length > 0 && (
          <CheckList
            label="Heads received"
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
              label: `${head.what} for ${head.tag}${head.pulled ? ' (removed from its job: kept for stock)' : ''}`,
            }))}
          />
        )}
        {came.length > 0 && (
          <div className="columns">
            {came.map((head, at) => (
              <TextInput
                key={head.visitId}
                label={`Tag number of ${heads.find((entry) => entry.visitId === head.visitId)?.tag ?? ''}`}
                hint={
                  at === 0 ? `Leave empty for the next number, ${order.nextTag}.` : 'Leave empty for the number after.'
                }
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
            label={`Quantity received: ${line.what}`}
            hint={`${line.quantity - line.arrived} outstanding.`}
            required={false}
            inputMode="numeric"
            {...form.text(`parts.${at}.quantity`)}
          />
        ))}
      </ActionForm>
    </section>
  )
}
