'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { nothingYet } from '@/app/_components/ui/nothing-yet'

/**
 * Parts that few steps show, or that stand below the work: the step itself has to be there at once. `load-ahead.ts` fetches
 * them while nobody waits, so that they are there without the network.
 */
export const CornerInsetForm = dynamic(
  () => untilHere(() => import('./corner-inset-form').then((file) => file.CornerInsetForm)),
  {
    loading: nothingYet,
  },
)
export const LeftDraft = dynamic(() => untilHere(() => import('./left-draft').then((file) => file.LeftDraft)), {
  loading: nothingYet,
})
/** Steps at which no edge and no bolt hole is worked on do not load the drawing. */
export const HeadDrawn = dynamic(() => untilHere(() => import('./head-drawn').then((file) => file.HeadDrawn)), {
  loading: nothingYet,
})
export const CutTable = dynamic(() => untilHere(() => import('./cut-table').then((file) => file.CutTable)), {
  loading: nothingYet,
})
export const NextPass = dynamic(() => untilHere(() => import('./next-pass').then((file) => file.NextPass)), {
  loading: nothingYet,
})
export const SecondCheck = dynamic(() => untilHere(() => import('./second-check').then((file) => file.SecondCheck)), {
  loading: nothingYet,
})
export const Notices = dynamic(() => untilHere(() => import('./notices').then((file) => file.Notices)), {
  loading: nothingYet,
})
export const AddPhoto = dynamic(
  () => untilHere(() => import('@/app/_components/photo/add-photo').then((file) => file.AddPhoto)),
  {
    loading: nothingYet,
  },
)
export const PhotoStrip = dynamic(
  () => untilHere(() => import('@/app/_components/photo/photo-strip').then((file) => file.PhotoStrip)),
  {
    loading: nothingYet,
  },
)
export const Others = dynamic(() => untilHere(() => import('./others').then((file) => file.Others)), {
  loading: nothingYet,
})
/** Only a flow run loads its conditions, and only a conflict its two sides. */
export const FlowConditions = dynamic(
  () => untilHere(() => import('./flow-conditions').then((file) => file.FlowConditions)),
  {
    loading: nothingYet,
  },
)
export const StepConflict = dynamic(
  () => untilHere(() => import('./step-conflict').then((file) => file.StepConflict)),
  {
    loading: nothingYet,
  },
)
export const Repeats = dynamic(() => untilHere(() => import('./repeats').then((file) => file.Repeats)), {
  loading: nothingYet,
})
export const Yours = dynamic(() => untilHere(() => import('./yours').then((file) => file.Yours)), {
  loading: nothingYet,
})
/** Other steps than those at the valves do not load it. */
export const ValveSheet = dynamic(
  () => untilHere(() => import('./valve-sheet/valve-sheet').then((file) => file.ValveSheet)),
  {
    loading: nothingYet,
  },
)
export const FlowFields = dynamic(() => untilHere(() => import('./flow-fields').then((file) => file.FlowFields)), {
  loading: nothingYet,
})
export const PhotoField = dynamic(() => untilHere(() => import('./photo-field').then((file) => file.PhotoField)), {
  loading: nothingYet,
})
/** What was read at a ticked step; its buttons to take the tick back and to go on do not wait for it. */
export const AnswersDone = dynamic(() => untilHere(() => import('./answers-done').then((file) => file.AnswersDone)), {
  loading: nothingYet,
})
/** Answers that no button has. */
export const InWords = dynamic(() => untilHere(() => import('./in-words').then((file) => file.InWords)), {
  loading: nothingYet,
})
