import type { DraftKind } from '@/app/_components/form/draft-store'
import type { Answers } from './answers'

export type StepDraft = {
  readonly shape: 1
  readonly answers: Answers
  readonly conditions: Readonly<Record<string, string>>
  /** By kind of reading; '' or left out: not named. */
  readonly instruments: Readonly<Record<string, string>>
}

/** What is typed at a step. The schema comes when there is a draft: the step itself has to be there at once. */
export const stepDraft: DraftKind<StepDraft> = {
  shape: 1,
  schema: () => import('./step-draft-schema').then((file) => file.stepDraftSchema),
}
