import type { Wanted } from '@/lib/core/wanted/wanted-of'
import { figureKey, type ExpectedFacts } from '@/lib/core/expected/types'
import { unknownHead } from './facts'
import type { seeded } from '../rate/random'

type Random = ReturnType<typeof seeded>

/** One step of an invented head: what an honest machinist types, and what is known there. */
export type InventedStep = {
  readonly name: string
  readonly facts: ExpectedFacts
  readonly typed: Readonly<Record<string, string>>
}

const ports = ['intake', 'exhaust'] as const
const corners = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']
const inches = (value: number, decimals = 4) => value.toFixed(decimals).replace(/^(-?)0\./, '$1.')

/**
 * A head with its true figures drawn at random, read with the errors that are customary: burette 0.3 cc, micrometer 0.5
 * thou, depth gauge 1.5 thou, mill 0.3 thou, flow bench 1 %. The truth is drawn here and nowhere else.
 */
export function inventedHead(random: Random): InventedStep[] {
  const { uniform, normal } = random
  const between = (least: number, most: number) => least + (most - least) * uniform()
  const among = <T>(all: readonly T[]): T => all[Math.floor(uniform() * all.length)] as T

  const chambers = among([2, 3, 4, 4, 4, 6])
  const numbers = Array.from({ length: chambers }, (_, at) => String(at + 1))
  const nominalCc = between(22, 118)
  const castCc = nominalCc + normal(0, 1)
  const trueCc = numbers.map(() => castCc + normal(0, 0.4))
  const newIn = between(3.2, 5.2)
  const goneIn = uniform() < 0.5 ? 0 : between(0.002, 0.03)
  const goneKnown = uniform() < 0.7
  const hasMate = uniform() < 0.7
  const thick = corners.map(() => newIn - goneIn + normal(0, 0.0006))
  // The record's rate is off the truth by what it says of itself.
  const ratePrior = 1 / between(4.5, 9)
  const rateTrue = ratePrior * (1 + normal(0, 0.05)) * (1 + normal(0, 0.03))
  const cutIn = Math.round(between(0.006, 0.05) * 2000) / 2000
  const reallyIn = cutIn + normal(0, 0.0003)

  const base: ExpectedFacts = {
    ...unknownHead,
    chambers,
    thickness: { newIn: uniform() < 0.8 ? newIn : null, goneIn: goneKnown ? goneIn : null },
    chamber: {
      ...unknownHead.chamber,
      nominalLessGoneCc: uniform() < 0.8 ? nominalCc - goneIn * 1000 * ratePrior : null,
      rate: { ccPerThou: ratePrior, uCcPerThou: 0.05 * ratePrior, priorCcPerThou: ratePrior, betweenHeadPart: 0.03 },
    },
    mill: { ...unknownHead.mill, adviceIn: cutIn, planFlatIn: cutIn },
    straightness: { acrossIn: 0.002, alongIn: 0.001 * chambers },
    mate: hasMate ? { [figureKey('cc', '')]: castCc + normal(0, 0.5) } : {},
  }
  const goneTrue = goneIn * 1000 * rateTrue
  const ccBefore = trueCc.map((cc) => cc - goneTrue)
  const readCc = (cc: number) => (Math.round((cc + normal(0, 0.3)) / 0.1) * 0.1).toFixed(1)
  const ccTyped = Object.fromEntries(numbers.map((n, at) => [figureKey('cc', n), readCc(ccBefore[at] as number)]))
  const thickTyped = Object.fromEntries(
    corners.map((n, at) => [figureKey('thickness', n), inches((thick[at] as number) + normal(0, 0.0005))]),
  )
  const seatAt = { intake: between(0.08, 0.16), exhaust: between(0.08, 0.16) }
  const seatTrue = numbers.flatMap((n) => ports.map((p) => [`${n}-${p}`, seatAt[p] + normal(0, 0.003)] as const))
  const seatTyped = Object.fromEntries(
    seatTrue.map(([point, depth]) => [figureKey('seat-depth', point), inches(depth + normal(0, 0.0012), 3)]),
  )
  const known = (typed: Readonly<Record<string, string>>) =>
    Object.fromEntries(Object.entries(typed).map(([key, text]) => [key, Number(text)]))
  const before = { ...known(ccTyped), ...known(thickTyped), ...known(seatTyped) }
  const cut = { shallowIn: cutIn, deepIn: cutIn }
  const ccAfter = ccBefore.map((cc) => cc - reallyIn * 1000 * rateTrue)
  const run = (worked: number) => flowRun(random, between, worked)

  return [
    {
      name: 'thickness',
      facts: { ...base, stepId: 'thickness' },
      typed: {
        ...thickTyped,
        [figureKey('straightness', 'across')]: inches(between(0, 0.004), 3),
        [figureKey('straightness', 'along')]: inches(between(0, 0.006), 3),
      },
    },
    { name: 'chambers', facts: base, typed: ccTyped },
    { name: 'seats before', facts: { ...base, stepId: 'seat-before' }, typed: seatTyped },
    { name: 'flow', facts: { ...base, stepId: 'flow' }, typed: run(1) },
    {
      name: 'flat cut',
      facts: { ...base, stepId: 'flat-cut', before },
      typed: {
        [figureKey('cut-depth', '')]: inches(cutIn + Math.round(normal(0, 0.0004) * 2000) / 2000),
        [figureKey('cc', 'at-size')]: readCc(ccAfter[0] as number),
      },
    },
    {
      name: 'seats after',
      facts: { ...base, stepId: 'seat-after', before, cut },
      typed: Object.fromEntries(
        seatTrue.map(([point, depth]) => [
          figureKey('seat-depth', point),
          inches(depth - reallyIn + normal(0, 0.0012), 3),
        ]),
      ),
    },
    { name: 'heights', ...heights(base, random, hasMate) },
    {
      name: 'finished',
      facts: { ...base, stepId: 'finished', before, cut },
      typed: {
        ...Object.fromEntries(numbers.map((n, at) => [figureKey('cc', n), readCc(ccAfter[at] as number)])),
        ...Object.fromEntries(
          corners.map((n, at) => [
            figureKey('thickness', n),
            inches((thick[at] as number) - reallyIn + normal(0, 0.0005)),
          ]),
        ),
      },
    },
  ]
}

/** Rises with lift and levels off, each port its own way; the bench repeats within 1 %. */
function flowRun({ uniform, normal }: Random, between: (least: number, most: number) => number, worked: number) {
  const grid = uniform() < 0.5 ? [0.1, 0.2, 0.3, 0.4, 0.5, 0.6] : [0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5]
  return Object.fromEntries(
    ports.flatMap((port) => {
      const most = port === 'intake' ? between(180, 330) : between(120, 230)
      const bend = between(0.18, 0.4)
      const stall = uniform() < 0.15 ? 0.06 : 0
      return grid.map((lift) => {
        const fallen = 1 - stall * Math.max(0, (lift - 0.4) / 0.2)
        const cfm = most * worked * (1 - Math.exp(-lift / bend)) * fallen * (1 + normal(0, 0.01))
        return [figureKey('flow', `${port}@${lift.toFixed(3)}`), cfm.toFixed(0)]
      })
    }),
  )
}

/** As it is kept when it was typed on the job; retainer to seal is nobody's to want. */
const onTheJob = (typed: Readonly<Record<string, number>>): Wanted =>
  Object.fromEntries(
    Object.entries({ 'installed-height': 'InstalledHeightIn', 'coil-bind': 'CoilBindIn' }).flatMap(([kind, name]) =>
      ports.map((port) => {
        const value = typed[`${kind}|${port}`] as number
        return [`${port}${name}`, { value, text: String(value), unit: 'in', from: 'job' }]
      }),
    ),
  )

function heights(base: ExpectedFacts, { uniform, normal }: Random, hasMate: boolean) {
  const installed = { intake: 1.7 + 0.3 * uniform(), exhaust: 1.7 + 0.3 * uniform() }
  const lift = { intake: 0.4 + 0.15 * uniform(), exhaust: 0.4 + 0.15 * uniform() }
  const shape = (port: 'intake' | 'exhaust') => ({
    'installed-height': installed[port],
    'retainer-to-seal': lift[port] + 0.075 + 0.03 * Math.abs(normal(0, 1)),
    'coil-bind': installed[port] - lift[port] - 0.08 - 0.03 * Math.abs(normal(0, 1)),
  })
  const wanted = Object.fromEntries(
    ports.flatMap((port) =>
      Object.entries(shape(port)).map(([kind, value]) => [`${kind}|${port}`, Number(value.toFixed(3))]),
    ),
  )
  const typed = Object.fromEntries(
    Object.entries(wanted).map(([key, value]) => [key, inches(value + normal(0, 0.003), 3)]),
  )
  const facts: ExpectedFacts = {
    ...base,
    stepId: 'heights',
    liftIn: lift,
    wanted: hasMate ? {} : onTheJob(wanted),
    mate: hasMate ? { ...base.mate, ...wanted } : base.mate,
  }
  return { facts, typed }
}
