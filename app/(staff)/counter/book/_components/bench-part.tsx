'use client'
import { useMemo, useState } from 'react'
import { useWatch } from 'react-hook-form'
import { BenchAnswer } from '@/app/_components/bench/bench-answer'
import { useBenchCasting } from '@/app/_components/bench/use-bench-casting'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import type { BenchQuestion, CutOption } from '@/lib/core/options/bench-types'
import { questionOf } from '@/lib/core/options/question-of'
import { wayAt } from '@/lib/core/options/way-cut'
import { wayTitle } from '@/lib/core/options/way-words'
import { readBench } from '@/lib/schemas/bench-question'
import { benchFromBooking, firstPlanOf, withWay } from '@/lib/schemas/booking-from-bench'
import type { BookJobForm } from '@/lib/schemas/job'
import type { BookingView } from '@/lib/use-cases/jobs/see-booking'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'

type Props = { form: BookingActionForm; booking: BookingView }

/** "Can you get it to N cc?" where the caller asks it: inside the booking, from what is filled in so far. */
export function BenchPart({ form, booking }: Props) {
  const [open, setOpen] = useState(false)
  return (
    <details className={styles.fold} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>Cut bench: what it takes</summary>
      {open && <Answer form={form} booking={booking} />}
    </details>
  )
}

function Answer({ form, booking }: Props) {
  const values = useWatch({ control: form.form.control }) as BookJobForm
  const bench = useMemo(() => benchFromBooking(values), [values])
  const { casting, loading } = useBenchCasting(bench.castingId, null)
  const question = useMemo(
    () => questionOf(readBench(bench).asked, casting, booking.bench),
    [bench, casting, booking.bench],
  )
  if (loading) return <Busy when label="Fetching the casting’s record" />
  return (
    <BenchAnswer
      question={question}
      casting={casting}
      money={booking}
      actions={({ way, angleIn }) => <OrderWay form={form} way={placed(question, way, angleIn)} />}
    />
  )
}

/** The cut as the slider has it. */
function placed(question: BenchQuestion, way: CutOption, angleIn: number | null): CutOption {
  const at = angleIn === null ? null : wayAt(question, way.start, angleIn)
  return at?.ok ? at.value : way
}

function OrderWay({ form, way }: { form: BookingActionForm; way: CutOption }) {
  const [ordered, setOrdered] = useState('')
  const order = () => {
    form.form.setValue('ordered', withWay(form.form.getValues('ordered'), way.kind), { shouldDirty: true })
    const cut = { kind: way.kind, angleIn: way.worked?.record.angleIn ?? 0, title: wayTitle(way) }
    form.form.setValue('firstPlan', firstPlanOf({ stopAtIn: '', sinkIn: '' }, cut), { shouldDirty: true })
    if (way.start.supply !== 'own') {
      form.form.setValue('heads.0.source', way.start.cutByMaker ? 'bought-cut' : 'bought', {
        shouldDirty: true,
      })
    }
    setOrdered(way.id)
  }
  return (
    <div className="row">
      <Button onClick={order} disabled={way.ruledOut !== ''}>
        Order this way
      </Button>
      <span role="status">{ordered === way.id ? 'It is in the ordered work now.' : ''}</span>
    </div>
  )
}
