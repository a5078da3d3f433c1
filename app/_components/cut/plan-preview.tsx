'use client'
import type { ChamberShape } from '@/lib/core/casting/chamber-shape'
import { Link } from '@/app/_components/ui/link'
import { Follows } from '@/app/_components/bench/follows'
import { Marks } from '@/app/_components/charts/marks-svg'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { castingAsItIs } from '@/lib/core/options/drawn-casting'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { workedPlan, type PlanInputs, type WorkedPlan } from '@/lib/core/options/plan-record-of'
import { chamberLines, planTitle } from '@/lib/core/options/plan-words'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Quantity } from '@/lib/core/units/quantities'
import { cutSection } from '@/lib/drawing/cut-section'
import type { TypedCut } from './cut-choice'
import { CutCautions } from './cut-cautions'
import styles from './plan-preview.module.css'

type PreviewInputs = PlanInputs & { readonly chamberShape: ChamberShape }

const valueOf = (text: string, quantity: Quantity): number | null => {
  const parsed = parseFigure(text, quantity)
  return parsed.ok ? parsed.value.value : null
}

type Props = {
  ground: PreviewInputs
  typed: TypedCut
  /** By the name of a figure that is needed: where it is entered. */
  whereNeeded: Readonly<Record<string, { readonly message: string; readonly href: string }>>
  /** A kept plan stands on the same page: this one says that it is not it. */
  notKept?: boolean
}

/** What the cut that is being chosen does, or why it cannot be and where that is put right. */
export function PlanPreview({ ground, typed, whereNeeded, notKept = false }: Props) {
  const answer = workedPlan(ground, {
    kind: typed.kind,
    splitBy: typed.splitBy,
    flatIn: valueOf(typed.flatIn, 'cutDepth'),
    angleIn: valueOf(typed.angleIn, 'cutDepth'),
    angleDeg: valueOf(typed.angleDeg, 'angle'),
    stopAtIn: valueOf(typed.stopAtIn, 'cutDepth'),
    sinkIn: valueOf(typed.sinkIn, 'sink'),
    thicknessIn: valueOf(typed.thicknessIn, 'thickness'),
  })
  return (
    <section aria-label="What this cut does" aria-live="polite" className="stack">
      {answer.ok ? (
        <Worked ground={ground} worked={answer.value} notKept={notKept} />
      ) : (
        <Notice live={false} title="Not possible like this">
          <p>{answer.refusal.message}</p>
          {(answer.refusal.needs ?? []).map((name) => {
            const place = whereNeeded[name]
            return (
              place && (
                <p key={name}>
                  <Link href={place.href}>{place.message}</Link>
                </p>
              )
            )
          })}
        </Notice>
      )}
    </section>
  )
}

type WorkedProps = { ground: PreviewInputs; worked: WorkedPlan; notKept: boolean }

function Worked({ ground, worked, notKept }: WorkedProps) {
  const { record, follows, flatDeck } = worked
  const { casting, deepEdge, chamberShape } = ground
  const title = notKept ? `Not kept: ${planTitle(record)}` : planTitle(record)
  const size = notKept ? 'figure' : 'figure-large'
  if (record.kind === 'none') return <p className={size}>{title}</p>
  return (
    <>
      <p className={size}>{title}</p>
      <div className={styles.beside}>
        <div className="stack">
          <Marks
            drawing={cutSection({
              casting: castingAsItIs(ground.heads, casting, deepEdge),
              chamberShape,
              deepEdge,
              cut: record,
            })}
          />
          <DefinitionList items={chamberLines(record)} />
          <CutCautions cautions={record.cautions} />
        </div>
        <Follows
          groups={consequenceLines({
            cut: { ...record, milledWidthIn: casting.milledWidthIn },
            deepEdge,
            follows,
            ptvLeastIn: ground.ptvLeastIn,
            sealingMarginIn: ground.sealingMarginIn ?? 0,
            flatDeck,
          })}
        />
      </div>
      <p className="soft">
        {flatDeck
          ? 'These are plans. Check the thickness at the mill before the last pass. The machinist in charge decides; the engine maker’s limits come first.'
          : 'These are plans. The figure at the mill is the next safe pass. The machinist in charge decides; makers’ instructions come first.'}
      </p>
    </>
  )
}
