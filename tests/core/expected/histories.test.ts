import { describe, expect, it } from 'vitest'
import { questionsOf, type TypedFigure } from '@/lib/core/expected/questions'
import { stopsOf } from '@/lib/core/expected/stops'
import { figureKey } from '@/lib/core/expected/types'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { parseFigure } from '@/lib/core/units/parse-figure'
import { seeded } from '../rate/random'
import { inventedHead, type InventedStep } from './invented-head'

const heads = 1000
const seed = 20_317

type Read = { readonly figures: readonly TypedFigure[]; readonly refused: number }

/** As the cells take it: what cannot be read is refused at once. */
function read(typed: Readonly<Record<string, string>>): Read {
  const parsed = Object.entries(typed).map(([key, text]) => {
    const [kind = '', point = ''] = key.split('|')
    const figure = parseFigure(text, readingSpecs[kind as ReadingKind].quantity!)
    return figure.ok ? { kind: kind as ReadingKind, point, ...figure.value } : null
  })
  const figures = parsed.filter((one) => one !== null)
  return { figures, refused: parsed.length - figures.length }
}

function judge({ facts }: InventedStep, { figures, refused }: Read) {
  const here = Object.fromEntries(figures.map((one) => [figureKey(one.kind, one.point), one.value]))
  return { questions: questionsOf(figures, facts), stops: stopsOf({ ...facts, here }), refused }
}

const slipKinds = ['point', 'thou', 'digits', 'neighbour'] as const
type SlipKind = (typeof slipKinds)[number]

/** A slip made on the text, by hand and not by the code that undoes it; null where this figure cannot slip so. */
function slip(kind: SlipKind, key: string, typed: Readonly<Record<string, string>>, random: () => number) {
  const text = typed[key] ?? ''
  const value = Number(text)
  if (kind === 'point') return { ...typed, [key]: String(Number((value * (random() < 0.5 ? 10 : 0.1)).toPrecision(8))) }
  if (kind === 'thou')
    return readingSpecs[key.split('|')[0] as ReadingKind].quantity === 'chamberVolume' || key.startsWith('flow')
      ? null
      : { ...typed, [key]: `${text} thou` }
  if (kind === 'digits') {
    const at = [...text].flatMap((sign, place) =>
      /\d/.test(sign) && /\d/.test(text[place + 1] ?? '') && sign !== text[place + 1] ? [place] : [],
    )
    const place = at[Math.floor(random() * at.length)]
    if (place === undefined) return null
    return { ...typed, [key]: `${text.slice(0, place)}${text[place + 1]}${text[place]}${text.slice(place + 2)}` }
  }
  const others = Object.keys(typed).filter((other) => other !== key && other.split('|')[0] === key.split('|')[0])
  const other = others[Math.floor(random() * others.length)]
  return other === undefined ? null : { ...typed, [key]: typed[other] ?? '', [other]: text }
}

/** How large an error must be to matter at the machine or on the paper: half of what would be a fault there. */
const matters: Readonly<Record<string, (wrong: number, right: number) => boolean>> = {
  cc: (wrong, right) => Math.abs(wrong - right) > Math.max(2, 0.05 * right),
  thickness: (wrong, right) => Math.abs(wrong - right) > 0.012,
  'seat-depth': (wrong, right) => Math.abs(wrong - right) > 0.02,
  'cut-depth': (wrong, right) => Math.abs(wrong - right) > 0.0035,
  straightness: (wrong, right) => Math.abs(wrong - right) > 0.02,
  flow: (wrong, right) => Math.abs(wrong - right) > 0.25 * right,
}
const isLarge = (key: string, wrong: string, right: string): boolean => {
  const figure = read({ [key]: wrong }).figures[0]
  const test = matters[key.split('|')[0] ?? ''] ?? ((a: number, b: number) => Math.abs(a - b) > 0.035)
  return figure === undefined || test(figure.value, Number(right))
}

const say = (text: string, ...figures: readonly unknown[]): boolean =>
  process.stdout.write(`${[text, ...figures.map((one) => JSON.stringify(one))].join(' ')}\n`)

describe(`${heads} invented heads, seed ${seed}`, () => {
  it('questions fewer than one honest reading in 200, and stops none', () => {
    const random = seeded(seed)
    const byKind = new Map<string, { read: number; asked: number }>()
    let stops = 0
    for (let head = 0; head < heads; head++) {
      for (const step of inventedHead(random)) {
        const answer = judge(step, read(step.typed))
        expect(answer.refused).toBe(0)
        stops += answer.stops.length
        for (const key of Object.keys(step.typed)) {
          const name = `${step.name} ${key.split('|')[0]}`
          const count = byKind.get(name) ?? { read: 0, asked: 0 }
          const asked = answer.questions.some(({ kind, point }) => figureKey(kind, point) === key)
          byKind.set(name, { read: count.read + 1, asked: count.asked + Number(asked) })
        }
      }
    }
    const all = [...byKind.values()]
    const asked = all.reduce((sum, one) => sum + one.asked, 0)
    const total = all.reduce((sum, one) => sum + one.read, 0)
    say(`honest readings: ${asked} of ${total} questioned, ${stops} stopped`, Object.fromEntries(byKind))
    expect(total).toBeGreaterThan(30_000)
    expect(asked / total).toBeLessThan(1 / 200)
    expect(stops).toBe(0)
  })

  it('catches more than 95 in 100 slips that matter', () => {
    const random = seeded(seed + 1)
    const counts = Object.fromEntries(
      slipKinds.map((kind) => [kind, { planted: 0, caught: 0, large: 0, largeCaught: 0 }]),
    )
    const missed: Record<string, number> = {}
    let planted = 0
    while (planted < heads) {
      const steps = inventedHead(random)
      const step = steps[Math.floor(random.uniform() * steps.length)] as InventedStep
      const keys = Object.keys(step.typed)
      const key = keys[Math.floor(random.uniform() * keys.length)] as string
      const kind = slipKinds[Math.floor(random.uniform() * slipKinds.length)] as SlipKind
      const typed = slip(kind, key, step.typed, random.uniform)
      if (!typed || typed[key] === step.typed[key]) continue
      const answer = judge(step, read(typed))
      const caught = answer.refused > 0 || answer.questions.length > 0 || answer.stops.length > 0
      const large = isLarge(key, typed[key] ?? '', step.typed[key] ?? '')
      const count = counts[kind]!
      counts[kind] = {
        planted: count.planted + 1,
        caught: count.caught + Number(caught),
        large: count.large + Number(large),
        largeCaught: count.largeCaught + Number(large && caught),
      }
      if (large && !caught) {
        const name = `${step.name}, ${key.split('|')[0]}, ${kind}`
        missed[name] = (missed[name] ?? 0) + 1
      }
      planted += 1
    }
    const sum = (part: 'planted' | 'caught' | 'large' | 'largeCaught') =>
      Object.values(counts).reduce((total, one) => total + one[part], 0)
    say(
      `slips: ${sum('caught')} of ${sum('planted')} caught, of those that matter ${sum('largeCaught')} of ${sum('large')}`,
      counts,
      missed,
    )
    expect(sum('large')).toBeGreaterThan(500)
    expect(sum('largeCaught') / sum('large')).toBeGreaterThan(0.95)
  })
})
