import type { DraftKind } from './draft-store'

export type AttemptDraft = { readonly shape: 1; readonly name: string; readonly op: string; readonly input?: unknown }
export type FormDraft = { readonly shape: 1; readonly values: Readonly<Record<string, unknown>> }

export type TabDraft = FormDraft & {
  /** By which a person knows it again: the customer's name. */
  readonly name: string
  /** When it was typed, ISO. */
  readonly at: string
}

/** An operation that has no answer yet. */
export const attemptDraft: DraftKind<AttemptDraft> = {
  shape: 1,
  schema: () => import('./draft-schemas').then((file) => file.attemptDraftSchema),
}

/** What is typed into a form. The form's own schema checks the values when they are sent. */
export const formDraft: DraftKind<FormDraft> = {
  shape: 1,
  schema: () => import('./draft-schemas').then((file) => file.formDraftSchema),
}

/** The same with its name and time, of one tab. */
export const tabDraft: DraftKind<TabDraft> = {
  shape: 1,
  schema: () => import('./draft-schemas').then((file) => file.tabDraftSchema),
}
