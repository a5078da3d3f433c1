import { flowConditionFields } from '@/lib/core/readings/flow-conditions'
import type { FlowPort, FlowRun } from '@/lib/core/flow/types'
import { capital, lower } from '@/lib/core/route/words'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Quantity } from '@/lib/core/units/quantities'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import { readingConditions, type Conditions } from '@/lib/data/stored/records'

/** One port's run at one place in the job, with its conditions as typed. */
export type PaperRun = {
  readonly run: FlowRun
  readonly chamber: string
  readonly conditionWords: string
}

type Typed = Conditions

function figureOf(typed: Typed, key: string, quantity: Quantity): number | null {
  const parsed = parseFigure(typed[key] ?? '', quantity)
  return parsed.ok ? parsed.value.value : null
}

/** "2" of a repeat; the first run has no number of its own. */
export const runNumber = ({ id, conditions }: { readonly id: string; readonly conditions: string }): number =>
  Math.max(1, Math.trunc(Number(readingConditions.read(conditions, id).run)) || 1)

const numberOf = ({ setId, conditions }: EffectiveReading): number => runNumber({ id: setId, conditions })

/**
 * The run of a port among the readings of one flow step; null when the port was not run. What was entered as one run
 * stands whole and alone: of several the last, and no lift of an earlier one is mixed in where the last did not go. Within
 * it the newest reading of a lift counts.
 */
export function runOf(readings: readonly EffectiveReading[], port: FlowPort, headId: string): PaperRun | null {
  const all = readings.filter((reading) => reading.kind === 'flow' && reading.point.startsWith(`${port}@`))
  const last = Math.max(...all.map(numberOf))
  const own = all.filter((reading) => numberOf(reading) === last)
  const newest = own.at(-1)
  if (!newest) return null
  const typed = readingConditions.read(newest.conditions, newest.setId)
  const byLift = new Map(
    own.map(({ point, value, notTaken, text }) => {
      const liftIn = Number(point.split('@')[1])
      return [liftIn, { liftIn, flowCfm: value, notTaken: value === null ? (notTaken ?? text) : null }] as const
    }),
  )
  return {
    run: {
      conditions: {
        port,
        headId,
        testPressureInH2O: figureOf(typed, 'testPressureInH2O', 'testPressure'),
        boreFixtureIn: figureOf(typed, 'boreFixtureIn', 'bore'),
        valveDiameterIn: figureOf(typed, `${port}ValveIn`, 'valveDiameter'),
        leakCfm: figureOf(typed, 'leakCfm', 'flow'),
        entryFitting: typed.entryFitting ?? '',
        exhaustFitting: typed.exhaustFitting ?? '',
      },
      points: [...byLift.values()],
    },
    chamber: (typed.chamber ?? '').trim(),
    conditionWords: wordsOf(typed, port),
  }
}

/** "test pressure, inH₂O 28; bore fixture, in 4.125": what was noted, under the names the bench uses. */
function wordsOf(typed: Typed, port: FlowPort): string {
  const other = port === 'intake' ? 'exhaustValveIn' : 'intakeValveIn'
  const parts = flowConditionFields
    .filter(({ key }) => key !== other)
    .flatMap(({ key, label }) => {
      const text = (typed[key] ?? '').trim()
      const [name = '', unit = ''] =
        label.split(', ').length > 1
          ? [label.slice(0, label.lastIndexOf(', ')), label.slice(label.lastIndexOf(', ') + 2)]
          : [label]
      const takenOff = key === 'leakCfm' ? ' taken off' : ''
      return text === ''
        ? []
        : [`${lower(name)} ${text}${/\d$/.test(text) && unit !== '' ? ` ${unit}` : ''}${takenOff}`]
    })
  return capital(parts.join(', '))
}
