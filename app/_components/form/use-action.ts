'use client'
import { useCallback, useEffect, useReducer, useRef, useTransition, type RefObject } from 'react'
import type { Refusal } from '@/lib/core/errors'
import { actionState, idle } from './action-state'
import { callAction, type ServerAction } from './call-action'
import { OperationIds, type Sight } from './operation-ids'

export type Deed<Input, Value> = {
  readonly action: ServerAction<Input, Value>
  readonly input: Input
  /** Tells deeds of one place apart that send the same: "start", "record". */
  readonly name?: string
  readonly onDone?: (value: Value) => void
  /** Done, whether the page stays or another one comes: what was kept of it can go. */
  readonly onTaken?: () => void
  readonly onRefused?: (refusal: Refusal) => void
}

export type UseAction = {
  /** Sends a deed once; a second one while it is under way is ignored. */
  readonly run: <Input extends object, Value>(deed: Deed<Input, Value>) => void
  /** Sends the deed that was refused once more, as the record is seen now. */
  readonly repeat: (sight: Sight) => void
  readonly pending: boolean
  readonly refusal: Refusal | null
  /** For the notice that shows the refusal: focus goes there. */
  readonly refusalRef: RefObject<HTMLDivElement | null>
  /** These fields were changed: what was wrong with them goes. */
  readonly edited: (...fields: readonly string[]) => void
  readonly clear: () => void
  readonly ids: RefObject<OperationIds>
}

/**
 * Deeds of one form or button: operation id, progress, and what was refused. `key`: an open attempt outlives the page
 * under it. The server's answer brings the page as it is after the deed.
 */
export function useAction(key?: string): UseAction {
  const [{ refusal }, dispatch] = useReducer(actionState, idle)
  const [pending, start] = useTransition()
  const ids = useRef(new OperationIds())
  const sending = useRef(false)
  const last = useRef<(sight: Sight) => void>(() => {})
  const refusalRef = useRef<HTMLDivElement>(null)

  useEffect(() => {
    if (key !== undefined) ids.current.keepUnder(key)
  }, [key])
  useEffect(() => {
    if (refusal) refusalRef.current?.focus()
  }, [refusal])

  const edited = useCallback((...fields: readonly string[]) => dispatch({ type: 'edited', fields }), [])

  async function send<Input, Value>(deed: Deed<Input, Value>) {
    const answer = await callAction(deed.action, await ids.current.callFor(deed.input, deed.name))
    if (answer.kind !== 'lost') ids.current.answered()
    if (answer.kind === 'taken' || answer.kind === 'moved') deed.onTaken?.()
    if (answer.kind === 'moved') return
    if (answer.kind === 'taken') {
      dispatch({ type: 'done' })
      return deed.onDone?.(answer.value)
    }
    dispatch({ type: 'refused', refusal: answer.refusal })
    deed.onRefused?.(answer.refusal)
  }

  function run<Input extends object, Value>(deed: Deed<Input, Value>) {
    if (sending.current) return
    sending.current = true
    last.current = (sight) => run({ ...deed, input: { ...deed.input, ...sight } })
    dispatch({ type: 'sent' })
    start(async () => {
      try {
        await send(deed)
      } finally {
        sending.current = false
      }
    })
  }

  return {
    run,
    repeat: (sight) => last.current(sight),
    pending,
    refusal,
    refusalRef,
    edited,
    clear: () => dispatch({ type: 'cleared' }),
    ids,
  }
}
