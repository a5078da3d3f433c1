'use client'
import type { ChamberShape } from '@/lib/core/casting/chamber-shape'
import { memo, useDeferredValue, useMemo } from 'react'
import { Marks } from '@/app/_components/charts/marks-svg'
import { CutCautions } from '@/app/_components/cut/cut-cautions'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { useMedia } from '@/app/_components/ui/use-media'
import type { BenchQuestion, CutOption, Start } from '@/lib/core/options/bench-types'
import { castingAsItIs } from '@/lib/core/options/drawn-casting'
import { consequenceLines } from '@/lib/core/options/consequence-lines'
import { earlierFlowWords, flowOfCutsLike, type EarlierFlow } from '@/lib/core/options/earlier-flow'
import { lineFrom, wayAt } from '@/lib/core/options/way-cut'
import { wayEffort, wayTitle } from '@/lib/core/options/way-words'
import { chamberLines } from '@/lib/core/options/plan-words'
import { cutSection } from '@/lib/drawing/cut-section'
import { Follows } from './follows'
import { LineSlider } from './line-slider'
import styles from './chosen-way.module.css'

type Props = {
  question: BenchQuestion
  way: CutOption
  angleIn: number | null
  onAngle: (angleIn: number) => void
  chamberShape: ChamberShape
  /** What the shop's own cuts of this casting did to flow. */
  flowed: readonly EarlierFlow[]
  /** They stand beside the answer already. */
  cautionsShown?: boolean
  onNeed?: (key: string) => void
}

/** One way in full: the section to scale, the slider along the line, and what follows beside it. */
export function ChosenWay({
  question,
  way,
  angleIn,
  onAngle,
  chamberShape,
  flowed,
  cautionsShown = false,
  onNeed,
}: Props) {
  const { start } = way
  // A flat-deck head is cut flat to a thickness: there is no line between flat and angle.
  const onLine = !start.flatDeck && (way.kind === 'flat' || way.kind === 'angle-flat' || way.kind === 'angle')
  const line = useMemo(() => (onLine ? lineFrom(question, start) : null), [onLine, question, start])
  // The slider goes with the finger at once; what follows is drawn after it, and left when the finger is elsewhere already.
  const drawnIn = useDeferredValue(angleIn)
  const moved = useMemo(() => (drawnIn === null ? null : wayAt(question, start, drawnIn)), [question, start, drawnIn])
  const shown = moved?.ok ? moved.value : way
  const { worked } = shown
  const ruledOut = moved?.ok === false ? moved.refusal.message : shown.ruledOut
  return (
    <section aria-label="Chosen option" className="part">
      <h2>{wayTitle(shown)}</h2>
      {ruledOut !== '' && (
        <Notice kind="stop" title="Not possible like this" live={false}>
          <p>{ruledOut}</p>
        </Notice>
      )}
      <div className={styles.beside}>
        <div className="stack">
          <Section start={start} chamberShape={chamberShape} way={shown} angleIn={drawnIn} />
          {line?.ok && (
            <LineSlider
              line={line.value}
              angleIn={angleIn ?? way.worked?.record.angleIn ?? 0}
              onAngle={onAngle}
              deepEdge={start.deepEdge}
            />
          )}
          {line && !line.ok && way.ruledOut === '' && <p className="soft">No slider: {line.refusal.message}</p>}
          <WayFigures way={shown} cautionsShown={cautionsShown} />
        </div>
        <WayFollows question={question} way={shown} flowed={flowed} onNeed={onNeed} />
      </div>
      {worked && (
        <p className="soft">
          A plan, not the figure at the mill: that is the next safe pass from what was measured. The machinist in charge
          decides; makers’ instructions come first.
        </p>
      )}
    </section>
  )
}

type SectionProps = Pick<Props, 'chamberShape' | 'angleIn'> & { start: Start; way: CutOption }

/** The casting as it is, to scale, with the cut. */
const Section = memo(function Section({ start, chamberShape, angleIn, way }: SectionProps) {
  const casting = useMemo(() => castingAsItIs(start.heads, start.casting, start.deepEdge), [start])
  // One drawing, not two of which one is hidden: it is made anew at every move.
  const narrow = useMedia('(max-width: 40rem)', false)
  const cut = way.worked?.record ?? { flatIn: 0, angleIn: angleIn ?? 0, angleDeg: null }
  return <Marks drawing={cutSection({ casting, chamberShape, deepEdge: start.deepEdge, cut, narrow })} />
})

const WayFigures = memo(function WayFigures({ way, cautionsShown }: { way: CutOption; cautionsShown: boolean }) {
  return (
    <>
      {way.worked && <DefinitionList items={chamberLines(way.worked.record)} />}
      {!cautionsShown && <CutCautions cautions={way.cautions} />}
    </>
  )
})

const WayFollows = memo(function WayFollows({
  question,
  way,
  flowed,
  onNeed,
}: Pick<Props, 'question' | 'way' | 'flowed' | 'onNeed'>) {
  const { worked, start } = way
  return (
    <div className="stack">
      {worked && (
        <Follows
          groups={consequenceLines({
            cut: { ...worked.record, milledWidthIn: start.casting.milledWidthIn },
            deepEdge: start.deepEdge,
            follows: worked.follows,
            ptvLeastIn: question.shop.ptvLeastIn,
            sealingMarginIn: question.shop.settings.sealingMarginIn,
            flatDeck: worked.flatDeck,
          })}
          onNeed={onNeed}
        />
      )}
      {worked && <FlowOfCuts flowed={flowOfCutsLike(flowed, worked.plan.deepestIn)} />}
      <WaySteps way={way} />
    </div>
  )
})

function WaySteps({ way }: { way: CutOption }) {
  if (way.steps.length === 0) return null
  return (
    <section aria-label="Steps needed">
      <h3>Steps needed</h3>
      <p>{wayEffort(way)}.</p>
      <ul className={styles.steps}>
        {way.steps.map(({ stepId, label, outside }) => (
          <li key={stepId}>{outside ? `${label} (at a vendor)` : label}</li>
        ))}
      </ul>
    </section>
  )
}

function FlowOfCuts({ flowed }: { flowed: readonly EarlierFlow[] }) {
  if (flowed.length === 0) return null
  return (
    <section aria-label="What such cuts did to flow">
      <h3>What such cuts did to flow</h3>
      <ul className={styles.flowed}>
        {flowed.map((cut) => (
          <li key={`${cut.jobNumber} ${cut.tag}`}>{earlierFlowWords(cut)}</li>
        ))}
      </ul>
      <p className="soft">The shop’s own cuts of about this depth, mean over the lifts both runs share.</p>
    </section>
  )
}
