'use client'
import { useState } from 'react'
import { useFound, type Picked } from '../shell/use-found'

type What = keyof Picked
export type Pick<W extends What> = Picked[W][number]

/** The first lines of a list by name; `more`: it has others, which are found by typing. */
export type FirstPicks<W extends What> = { readonly rows: readonly Pick<W>[]; readonly more: boolean }

export type Picks<W extends What> = {
  readonly what: W
  readonly more: boolean
  /** The first ones, those picked since, and those that the form names already. */
  readonly known: readonly Pick<W>[]
  readonly learn: (line: Pick<W>) => void
}

/** What a form picks from a list that may be long. `named`: ids that stand in the form; a draft may name any. */
export function usePicks<W extends What>(what: W, first: FirstPicks<W>, named: readonly string[]): Picks<W> {
  const [learned, setLearned] = useState<readonly Pick<W>[]>([])
  const here = [...first.rows, ...learned]
  const missing = [...new Set(named)].filter((id) => id !== '' && !here.some((line) => line.id === id))
  const fetched: readonly Pick<W>[] = useFound(what, first.more ? missing.slice(0, mostAsked).join(',') : '') ?? []
  const known = [...here, ...fetched]
  const learn = (line: Pick<W>) => {
    if (!here.some(({ id }) => id === line.id)) setLearned((before) => [...before, line])
  }
  return { what, more: first.more, known, learn }
}

/** As many ids as one question holds. */
const mostAsked = 3
