'use client'
import { Sign } from '@/app/_components/ui/sign'
import { figureKey, type ExpectedFacts } from '@/lib/core/expected/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { springOfValve, type SpringOfValve } from '@/lib/core/valve-sheet/spring'
import { rateWords, shimWords, springNeeds, usableWords } from '@/lib/words/valve-sheet'
import type { Answers } from '../answers'
import type { Row } from './grid'
import styles from './valve-sheet.module.css'

type Props = { rows: readonly Row[]; answers: Answers; facts: ExpectedFacts }

/** Usable lift and shims of every valve, worked out from what is typed, as it is typed. */
export function Springs({ rows, answers, facts }: Props) {
  const known = { ...facts, here: { ...facts.here, ...valuesOf(answers) } }
  const valves = rows.filter(({ all }) => !all).map((row) => ({ row, spring: springOfValve(row.point, known) }))
  return (
    <section className="stack" aria-labelledby="springs-as-typed">
      <h2 id="springs-as-typed">Usable lift and shims, as typed</h2>
      <ul className={`plain-list ${styles.springs}`}>
        {valves.map(({ row, spring }) => (
          <li key={row.point}>
            <strong>{row.name}</strong> <Usable spring={spring} /> <Shim spring={spring} />
          </li>
        ))}
      </ul>
      <p className="soft">
        Margins: {facts.limits.retainerMarginIn.toFixed(3)} in at the retainer,{' '}
        {facts.limits.coilBindMarginIn.toFixed(3)} in before coil bind. The spring maker’s figures go first; the
        machinist in charge decides.
      </p>
    </section>
  )
}

function Usable({ spring: { usable, liftIn } }: { spring: SpringOfValve }) {
  if (!usable.ok) return <span className={styles.line}>Usable lift {springNeeds(usable.refusal)}</span>
  return (
    <span className={styles.line}>
      {!usable.value.enough && <Sign kind="stop" />} Usable lift {usableWords(usable.value, liftIn ?? 0)}
    </span>
  )
}

function Shim({ spring: { shim, rateFrom, liftIn } }: { spring: SpringOfValve }) {
  if (shim === null) return null
  if (!shim.ok) return <span className={styles.line}>Shim {springNeeds(shim.refusal)}</span>
  const { usable } = shim.value
  const short = usable.ok && !usable.value.enough && shim.value.shimsIn.length > 0
  return (
    <span className={styles.line}>
      {shimWords(shim.value)} ({rateWords(rateFrom)}).
      {short && (
        <>
          {' '}
          <Sign kind="caution" /> With it the usable lift is {usableWords(usable.value, liftIn ?? 0)}.
        </>
      )}
    </span>
  )
}

/** What is typed, where it is a figure. */
const valuesOf = (answers: Answers): Record<string, number> =>
  Object.fromEntries(
    Object.entries(answers).flatMap(([key, { text }]) => {
      const [kind = '', point = ''] = key.split('|')
      const quantity = (readingSpecs[kind as ReadingKind] as (typeof readingSpecs)[ReadingKind] | undefined)?.quantity
      const parsed = quantity && text.trim() !== '' ? parseFigure(text, quantity) : null
      return parsed?.ok ? [[figureKey(kind as ReadingKind, point), parsed.value.value]] : []
    }),
  )
