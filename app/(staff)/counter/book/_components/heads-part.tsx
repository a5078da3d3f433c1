'use client'
import { useFieldArray } from 'react-hook-form'
import type { Picks } from '@/app/_components/pick/use-picks'
import { Button } from '@/app/_components/ui/button'
import { emptyHead, type HeadForm } from '@/lib/schemas/job'
import type { BookingActionForm } from './booking-action-form'
import { HeadFields } from './head-fields'
import { forHeads } from './priced-work'

/** The mate of a head: all that two heads of one engine share; what is each head's own starts empty. */
const mateOf = (head: HeadForm): HeadForm => ({
  ...head,
  ...{ headId: '', tag: '', stamp: '', side: '', comeback: false, comebackCause: '', comebackPays: '' },
})

export function HeadsPart({ form, castings }: { form: BookingActionForm; castings: Picks<'castings'> }) {
  const heads = useFieldArray({ control: form.form.control, name: 'heads' })
  const reprice = () => {
    const { prices, heads: now } = form.form.getValues()
    form.form.setValue('prices', forHeads(prices, now.length))
  }
  const add = () => {
    const last = form.form.getValues('heads').at(-1)
    heads.append(last ? mateOf(last) : emptyHead(), { shouldFocus: false })
    reprice()
  }
  const remove = (at: number) => {
    heads.remove(at)
    reprice()
  }
  return (
    <section className="part" aria-label="Heads">
      <h2>Heads</h2>
      {heads.fields.map((head, at) => (
        <HeadFields
          key={head.id}
          form={form}
          at={at}
          castings={castings}
          onRemove={heads.fields.length > 1 ? () => remove(at) : undefined}
        />
      ))}
      <div className="row">
        <Button onClick={add}>{heads.fields.length === 1 ? 'Make it a pair' : 'Add another head like the last'}</Button>
      </div>
    </section>
  )
}
