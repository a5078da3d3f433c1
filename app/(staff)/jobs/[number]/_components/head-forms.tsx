'use client'
import { takeOffHeadSchema, undoHandOverSchema } from '@/lib/schemas/ordinary'
import { takeOffHeadAction, undoHandOverAction } from '../actions'
import { ReasonForm } from './reason-form'

type Props = { jobId: string; visitId: string; onDone: () => void }

export const TakeOffForm = ({ jobId, visitId, onDone }: Props) => (
  <ReasonForm
    submitLabel="Take the head off the job"
    schema={takeOffHeadSchema}
    action={takeOffHeadAction}
    input={{ jobId, visitId }}
    onDone={onDone}
  >
    A head that is here is returned as is. One that did not come is taken off.
  </ReasonForm>
)

export const UndoHandOverForm = ({ visitId, onDone }: Omit<Props, 'jobId'>) => (
  <ReasonForm
    submitLabel="Take it back"
    schema={undoHandOverSchema}
    action={undoHandOverAction}
    input={{ visitId }}
    onDone={onDone}
  >
    On the day of the hand-over only. A payment that was taken with it stays: void it by itself.
  </ReasonForm>
)
