import type { Refusal } from '@/lib/core/errors'

/** Why the last try was refused or did not arrive; null: it was not, or the next try is under way. */
export type ActionState = { readonly refusal: Refusal | null }

export type ActionEvent =
  | { readonly type: 'sent' | 'done' | 'cleared' }
  | { readonly type: 'refused'; readonly refusal: Refusal }
  /** Fields that were changed since: what was wrong with them is not known any more. */
  | { readonly type: 'edited'; readonly fields: readonly string[] }

export const idle: ActionState = { refusal: null }

export function actionState(state: ActionState, event: ActionEvent): ActionState {
  if (event.type === 'refused') return { refusal: event.refusal }
  if (event.type !== 'edited') return idle
  const fields = state.refusal?.fields
  if (!state.refusal || !fields || event.fields.every((name) => !(name in fields))) return state
  const left = Object.entries(fields).filter(([name]) => !event.fields.includes(name))
  return left.length === 0 ? idle : { refusal: { ...state.refusal, fields: Object.fromEntries(left) } }
}
