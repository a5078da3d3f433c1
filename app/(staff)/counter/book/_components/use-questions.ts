'use client'
import { useEffect, useRef, useState } from 'react'
import { useWatch, type FieldPath } from 'react-hook-form'
import { useAlike } from '@/app/_components/is-it/use-alike'
import type { Refusal } from '@/lib/core/errors'
import type { AlikeHeadSeen, AlikeSeen } from '@/lib/use-cases/customers/see-alike'
import type { BookJobForm } from '@/lib/schemas/job'
import type { BookingActionForm } from './booking-action-form'

type Customer = AlikeSeen['customers'][number]
type Kind = 'customers' | 'heads'

type Alike = NonNullable<Refusal['alike']>

const none = { customers: [], heads: [] }

/** What is asked about the booking, and its answers: yes takes the one on record, no is kept in `notThese`. */
export function useQuestions({ form, refusal, clear }: BookingActionForm) {
  const [customer, heads, not = none] = useWatch({ control: form.control, name: ['customer', 'heads', 'notThese'] })
  const box = useRef<HTMLDivElement>(null)
  const [next, setNext] = useState<{ field: FieldPath<BookJobForm> } | null>(null)
  const { id, name, phone, email } = customer
  const typed = {
    customer: { id, name, phone, email },
    heads: heads.map(({ headId, stamp, tag }) => ({ headId, stamp, tag })),
  }
  const seen = useAlike(typed, refusal)
  const customers = (seen?.customers ?? []).filter((one) => !not.customers.includes(one.id))
  const alikeHeads = (seen?.heads ?? []).filter(({ headId }) => !not.heads.includes(headId))
  const isAsked = customers.length + alikeHeads.length > 0
  const refusedFor = refusal?.alike
  const isOver =
    refusedFor !== undefined && ((seen !== null && !isAsked) || isAnswered(refusedFor, { customer, heads, not }))

  useEffect(() => {
    if (isOver) clear()
  }, [isOver, clear])
  // The button that was pressed is gone with its question: focus goes to the next one, else to the field after it.
  useEffect(() => {
    if (next === null) return
    if (box.current) box.current.focus()
    else form.setFocus(next.field)
  }, [next, form])

  const no = (kind: Kind, other: string, field: FieldPath<BookJobForm>) => {
    const now = form.getValues('notThese') ?? none
    form.setValue('notThese', { ...now, [kind]: [...new Set([...now[kind], other])] }, { shouldDirty: true })
    setNext({ field })
  }
  const takeCustomer = ({ id, name, phone, email, address }: Customer) => {
    form.setValue('customer', { id, name, phone, email, address }, { shouldDirty: true, shouldValidate: true })
    setNext({ field: afterCustomer })
  }
  const takeHead = ({ at, headId, stamp, marks, castingId }: AlikeHeadSeen) => {
    const now = form.getValues(`heads.${at}`)
    form.setValue(`heads.${at}`, { ...now, headId, stamp, marks, castingId: castingId ?? '' }, { shouldDirty: true })
    setNext({ field: afterHead(at) })
  }
  return {
    /** Around all that is asked, while anything is. */
    box,
    customers,
    heads: alikeHeads,
    /** The booking was refused until this is answered. */
    refused: refusedFor && !isOver ? refusal : null,
    takeCustomer,
    notCustomer: (other: string) => no('customers', other, afterCustomer),
    takeHead,
    notHead: ({ at, headId }: AlikeHeadSeen) => no('heads', headId, afterHead(at)),
  }
}

type Answers = {
  readonly customer: { readonly id: string }
  readonly heads: readonly { readonly headId: string }[]
  readonly not: Alike
}

/** At once, before the server is asked about what was picked. */
const isAnswered = (asked: Alike, { customer, heads, not }: Answers): boolean =>
  (customer.id !== '' || asked.customers.every((id) => not.customers.includes(id))) &&
  asked.heads.every((id) => not.heads.includes(id) || heads.some(({ headId }) => headId === id))

const afterCustomer = 'heads.0.castingId'
const afterHead = (at: number) => `heads.${at}.side` as const
