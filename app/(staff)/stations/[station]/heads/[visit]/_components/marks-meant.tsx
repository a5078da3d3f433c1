'use client'
import { chooseMarksAction } from '@/app/(staff)/away/actions'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import type { CutAtStep } from '@/lib/use-cases/stations/cut-at-step'

type Props = { marks: NonNullable<CutAtStep['marksTwoWays']>; visitId: string; orderId: string }

/** Marks that can be read in two ways: each with what the corners say to it, and one tap for how it was meant. */
export function MarksMeant({ marks, visitId, orderId }: Props) {
  const { run, pending, refusal, refusalRef } = useAction()
  const isChosen = marks.ways.some(({ isMeant }) => isMeant)
  const choose = (way: number) =>
    run({ name: String(way), action: chooseMarksAction, input: { orderId, visitId, typed: marks.typed, way } })
  return (
    <Notice
      kind={isChosen ? 'info' : 'caution'}
      title={isChosen ? `Marked “${marks.typed}”` : `Marked “${marks.typed}”: two ways to read it`}
      live={false}
    >
      <p>The corners say: {marks.corners}.</p>
      <ul className="plain-list">
        {marks.ways.map(({ words, isMeant }, way) => (
          <li key={words} className="row spread">
            <span>{words}</span>
            {isMeant ? (
              <strong>Meant so</strong>
            ) : (
              <Button pending={pending} aria-label={`It means ${words}`} onClick={() => choose(way)}>
                It means this
              </Button>
            )}
          </li>
        ))}
      </ul>
      {!isChosen && <p>Neither is taken. If you do not know, ask the vendor.</p>}
      {refusal && <RefusalNotice refusal={refusal} title="Not saved" ref={refusalRef} />}
    </Notice>
  )
}
