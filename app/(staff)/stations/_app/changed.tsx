'use client'
import { useEffect } from 'react'
import { useMaybeHere } from './here'
import { useCatchUp } from './use-catch-up'

/** Comes with what the server draws: after a deed that did not go through the outbox, what is kept here is asked for anew. */
export function Changed({ newest }: { newest: number }) {
  return useMaybeHere() ? <CatchUp newest={newest} /> : null
}

function CatchUp({ newest }: { newest: number }) {
  const catchUp = useCatchUp()
  const { keeper } = useMaybeHere() ?? {}
  useEffect(() => {
    const known = keeper?.snapshot().newest ?? 0
    if (known > 0 && newest > known) void catchUp()
  }, [newest, keeper, catchUp])
  return null
}
