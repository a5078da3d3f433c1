'use client'
import { useEffect, useMemo, useState } from 'react'
import { useIdle } from '@/app/_components/ui/use-idle'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import type { Answers } from './answers'
import type { CellAsks } from './cell-asks'

type Rule = typeof import('./cell-asks').cellAsks

/** The rule comes after the page: until it is there the server alone asks. */
export function useCellAsks(facts: ExpectedFacts | null, keys: readonly string[], answers: Answers): CellAsks {
  const [rule, setRule] = useState<Rule | null>(null)
  const idle = useIdle()
  const wanted = facts !== null && idle
  useEffect(() => {
    if (!wanted) return
    let left = false
    void import('./cell-asks').then((file) => !left && setRule(() => file.cellAsks)).catch(() => undefined)
    return () => {
      left = true
    }
  }, [wanted])
  const list = keys.join(' ')
  return useMemo(
    () => (rule && facts ? rule(list === '' ? [] : list.split(' '), answers, facts) : {}),
    [rule, facts, list, answers],
  )
}

/** Cells whose figure is unlikely and not confirmed, or cannot be true. */
export const openAsks = (asks: CellAsks): string[] =>
  Object.entries(asks)
    .filter(([, { unlikely, confirmed, stop }]) => stop !== '' || (unlikely !== '' && !confirmed))
    .map(([key]) => key)
