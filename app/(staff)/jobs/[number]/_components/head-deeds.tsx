'use client'
import { takeOffHeadSchema, undoHandOverSchema } from '@/lib/schemas/ordinary'
import { takeOffHeadAction, undoHandOverAction } from '../actions'
import { ReasonDialog } from './reason-dialog'

export const TakeOff = ({ jobId, visitId, tag }: { jobId: string; visitId: string; tag: string }) => (
  <ReasonDialog
    title="Take off"
    of={tag}
    submitLabel="Take the head off the job"
    schema={takeOffHeadSchema}
    action={takeOffHeadAction}
    input={{ jobId, visitId }}
  >
    A head that is here is returned as is. One that did not come is taken off.
  </ReasonDialog>
)

export const UndoHandOver = ({ visitId, tag }: { visitId: string; tag: string }) => (
  <ReasonDialog
    title="Take back the hand-over"
    of={tag}
    submitLabel="Take it back"
    schema={undoHandOverSchema}
    action={undoHandOverAction}
    input={{ visitId }}
  >
    On the day of the hand-over only. A payment that was taken with it stays: void it by itself.
  </ReasonDialog>
)
