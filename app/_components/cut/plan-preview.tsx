'use client'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { planRecordOf, type PlanGround } from '@/lib/core/options/plan-record-of'
import { planLines, planTitle } from '@/lib/core/options/plan-words'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Quantity } from '@/lib/core/units/quantities'
import type { TypedCut } from './cut-choice'

const valueOf = (text: string, quantity: Quantity): number | null => {
  const parsed = parseFigure(text, quantity)
  return parsed.ok ? parsed.value.value : null
}

/** What the cut that is being chosen does, or why it cannot be. */
export function PlanPreview({ ground, typed }: { ground: PlanGround; typed: TypedCut }) {
  const answer = planRecordOf(ground, {
    kind: typed.kind,
    splitBy: typed.splitBy,
    flatIn: valueOf(typed.flatIn, 'cutDepth'),
    angleIn: valueOf(typed.angleIn, 'cutDepth'),
    angleDeg: valueOf(typed.angleDeg, 'angle'),
    stopAtIn: valueOf(typed.stopAtIn, 'cutDepth'),
    sinkIn: valueOf(typed.sinkIn, 'sink'),
  })
  return (
    <section aria-label="What this cut does" aria-live="polite" className="stack">
      {answer.ok ? (
        <>
          <p className="figure-large">{planTitle(answer.value)}</p>
          <DefinitionList
            items={planLines(answer.value, null).filter(
              (line) => line.label !== 'Gone since new, after this',
            )}
          />
          {answer.value.cautions.map((caution) => (
            <Notice key={caution} kind="caution" live={false}>
              <p>{caution}</p>
            </Notice>
          ))}
          {answer.value.kind !== 'none' && (
            <p className="soft">
              These are plans. The figure at the mill is the next safe pass. The machinist in charge decides;
              makers’ instructions come first.
            </p>
          )}
        </>
      ) : (
        <Notice live={false} title="Not possible like this">
          <p>{answer.refusal.message}</p>
        </Notice>
      )}
    </section>
  )
}
