'use client'
import { useCallback, useId, useMemo, useState } from 'react'
import { CutCautions } from '@/app/_components/cut/cut-cautions'
import { EmptyState } from '@/app/_components/ui/empty-state'
import type { BenchQuestion, CutOption } from '@/lib/core/options/bench-types'
import type { BenchCasting } from '@/lib/core/options/question-of'
import { wayTitle } from '@/lib/core/options/way-words'
import { waysOf } from '@/lib/core/options/ways'
import { ChosenWay } from './chosen-way'
import { StartsTable } from './starts-table'
import { WayList, type MoneyManner } from './way-list'

export type Chosen = { readonly way: CutOption; /** Null: as the way proposes. */ readonly angleIn: number | null }

type Props = {
  question: BenchQuestion
  /** The casting asked about; null: none is on record. */
  casting: BenchCasting | null
  /** How the shop writes money; null: prices are not for this person. */
  money: MoneyManner | null
  onNeed?: (key: string) => void
  /** What to do with the chosen way. */
  actions?: (chosen: Chosen) => React.ReactNode
}

/** The answer to a question, worked out here as it is typed: every way, the chosen one in full, the starts side by side. */
export function BenchAnswer({ question, casting, money, onNeed, actions }: Props) {
  const name = useId()
  const ways = useMemo(() => waysOf(question), [question])
  const [picked, setPicked] = useState<{ id: string; angleIn: number | null } | null>(null)
  const choose = useCallback((id: string) => setPicked({ id, angleIn: null }), [])
  const way = ways.find(({ id }) => id === picked?.id) ?? ways[0]
  if (!way && casting?.chamberShape === 'flat-deck') {
    return (
      <EmptyState title="Enter the wanted thickness">
        <p>A flat-deck head is cut to a thickness. For a clean-up, enter where it must stop.</p>
      </EmptyState>
    )
  }
  if (!way) {
    return (
      <EmptyState title="Enter a casting and a target">
        <p>
          A casting or the cc it holds now, and the cc that is wanted. For a clean-up without a target, where it must
          stop.
        </p>
      </EmptyState>
    )
  }
  const angleIn = way.id === picked?.id ? picked.angleIn : null
  return (
    <div className="stack-large">
      <section aria-label="Answer" className="stack">
        <p className="figure-large" role="status">
          {headline(ways)}
        </p>
        {ways[0]?.ruledOut === '' && <CutCautions cautions={ways[0].cautions} />}
        <WayList ways={ways} chosen={way.id} onChoose={choose} money={money} name={name} />
      </section>
      <ChosenWay
        key={way.id}
        question={question}
        way={way}
        angleIn={angleIn}
        onAngle={(angle) => setPicked({ id: way.id, angleIn: angle })}
        chamberShape={casting?.chamberShape ?? 'open'}
        flowed={casting?.flowed ?? []}
        cautionsShown={way === ways[0] && angleIn === null}
        onNeed={onNeed}
      />
      {actions?.({ way, angleIn })}
      <StartsTable ways={ways} money={money} />
    </div>
  )
}

function headline(ways: readonly CutOption[]): string {
  const [mildest] = ways
  if (!mildest || mildest.ruledOut !== '') return 'Not possible as asked: every option is ruled out.'
  return `Yes. ${wayTitle(mildest)}.`
}
