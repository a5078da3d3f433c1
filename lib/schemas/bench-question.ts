import { castingFigureKeys, castingFigures, type CastingFigureKey } from '@/lib/core/casting/figures'
import { camAnswers, camFacts, type CamAnswer } from '@/lib/core/engine/cam-answer'
import { engineFigureKeys, engineFigures, type EngineFigureKey } from '@/lib/core/engine/figures'
import type { Asked } from '@/lib/core/options/question-of'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { Quantity } from '@/lib/core/units/quantities'

// Without the library of shapes: the cut bench reads what is typed in the browser, and need not load it for that.

/** A question to the cut bench, as typed. Everything may be empty. */
export type BenchForm = {
  castingId: string
  /** One figure, or one a chamber with spaces between. */
  presentCc: string
  measured: boolean
  used: boolean
  goneIn: string
  targetCc: string
  stopAtIn: string
  sinkIn: string
  /** Of a flat-deck head: how thick it is to be and is, and how deep its valves and injectors stand now. */
  thicknessIn: string
  thicknessNow: string
  intakeRecession: string
  exhaustRecession: string
  protrusion: string
  classFlatOnly: boolean
  classMinCc: string
  classMaxCut: string
  layout: 'inline' | 'v' | 'unknown'
  camInHead: CamAnswer
  engine: Partial<Record<EngineFigureKey, string>>
  figures: Partial<Record<CastingFigureKey, string>>
}

export const emptyBench = (castingId = ''): BenchForm => ({
  castingId,
  presentCc: '',
  measured: false,
  used: true,
  goneIn: '',
  targetCc: '',
  stopAtIn: '',
  sinkIn: '',
  thicknessIn: '',
  thicknessNow: '',
  intakeRecession: '',
  exhaustRecession: '',
  protrusion: '',
  classFlatOnly: false,
  classMinCc: '',
  classMaxCut: '',
  layout: 'unknown',
  camInHead: 'unknown',
  engine: {},
  figures: {},
})

export type ReadBench = {
  readonly asked: Asked
  /** Field name → what is wrong with it; the answer goes by what could be read. */
  readonly errors: Readonly<Record<string, string>>
}

/** Reads a question figure by figure: one that cannot be read is left out and named, the others still count. */
export function readBench(form: BenchForm): ReadBench {
  const errors: Record<string, string> = {}
  const read = (field: string, typed: string | undefined, quantity: Quantity): number | null => {
    if (typed === undefined || typed.trim() === '') return null
    const parsed = parseFigure(typed, quantity)
    if (parsed.ok) return parsed.value.value
    errors[field] = parsed.refusal.message
    return null
  }
  const asked: Asked = {
    presentCc: presentOf(form.presentCc, (each) => read('presentCc', each, 'chamberVolume')),
    measured: form.measured,
    used: form.used,
    goneIn: read('goneIn', form.goneIn, 'removed'),
    targetCc: read('targetCc', form.targetCc, 'chamberVolume'),
    stopAtIn: read('stopAtIn', form.stopAtIn, 'stopAt'),
    sinkIn: read('sinkIn', form.sinkIn, 'sink'),
    thicknessIn: read('thicknessIn', form.thicknessIn, 'thickness'),
    thicknessNowIn: read('thicknessNow', form.thicknessNow, 'thickness'),
    recessionIn: {
      intake: read('intakeRecession', form.intakeRecession, 'recession'),
      exhaust: read('exhaustRecession', form.exhaustRecession, 'recession'),
    },
    protrusionIn: read('protrusion', form.protrusion, 'protrusion'),
    classFlatOnly: form.classFlatOnly,
    classMinCc: read('classMinCc', form.classMinCc, 'chamberVolume'),
    classMaxCutIn: read('classMaxCut', form.classMaxCut, 'cutDepth'),
    engine: {
      layout: form.layout,
      ...camFacts(form.camInHead),
      ...recordOf(engineFigureKeys, (key) => read(`engine.${key}`, form.engine[key], engineFigures[key].quantity)),
    },
    figures: recordOf(castingFigureKeys, (key) =>
      read(`figures.${key}`, form.figures[key], castingFigures[key].quantity),
    ),
  }
  return { asked, errors }
}

/** "64.2 64.0 64.4": spaces or semicolons between; a comma may be a decimal one. "62 cc" is one figure. */
function presentOf(typed: string, read: (each: string) => number | null): number[] {
  const tokens = typed.replace(/\s+(?=(cc|in|cm)\b)/gi, '').split(/[\s;]+/)
  return tokens.flatMap((token) => (token === '' ? [] : (read(token) ?? [])))
}

function recordOf<K extends string>(keys: readonly K[], read: (key: K) => number | null): Partial<Record<K, number>> {
  const entries = keys.flatMap((key) => {
    const value = read(key)
    return value === null ? [] : [[key, value] as const]
  })
  return Object.fromEntries(entries) as Partial<Record<K, number>>
}

const shortNames = {
  castingId: 'casting',
  presentCc: 'now',
  goneIn: 'gone',
  targetCc: 'to',
  stopAtIn: 'stop',
  sinkIn: 'sink',
  thicknessIn: 'thick',
  thicknessNow: 'thicknow',
  intakeRecession: 'in',
  exhaustRecession: 'ex',
  protrusion: 'injector',
  classMinCc: 'least',
  classMaxCut: 'deepest',
} as const satisfies Partial<Record<keyof BenchForm, string>>
const flags = { measured: 'measured', used: 'used', classFlatOnly: 'flat' } as const

/** A question as the query of a link: what is typed and nothing else, so that a colleague sees the same answer. */
export function benchQuery(form: BenchForm): string {
  const empty = emptyBench()
  const query = new URLSearchParams()
  for (const [name, short] of Object.entries(shortNames)) {
    const typed = form[name as keyof typeof shortNames].trim()
    if (typed !== '') query.set(short, typed)
  }
  for (const [name, short] of Object.entries(flags)) {
    const on = form[name as keyof typeof flags]
    if (on !== empty[name as keyof typeof flags]) query.set(short, on ? '1' : '0')
  }
  if (form.layout !== 'unknown') query.set('layout', form.layout)
  if (form.camInHead !== 'unknown') query.set('cam', form.camInHead)
  for (const part of ['engine', 'figures'] as const) {
    for (const [key, typed] of Object.entries(form[part])) if (typed?.trim()) query.set(key, typed.trim())
  }
  return query.toString()
}

/** The other way; what is not known or too long is left out. */
export function benchFromQuery(query: URLSearchParams): BenchForm {
  const form = emptyBench()
  const typed = (name: string): string => (query.get(name) ?? '').slice(0, 200)
  const named = Object.entries(shortNames).map(([name, short]) => [name, typed(short)])
  const on = Object.entries(flags).map(([name, short]) => {
    const given = query.get(short)
    return [name, given === null ? form[name as keyof typeof flags] : given === '1']
  })
  const layout = typed('layout')
  const cam = typed('cam')
  const recordFrom = (keys: readonly string[]) =>
    Object.fromEntries(keys.flatMap((key) => (typed(key) === '' ? [] : [[key, typed(key)]])))
  return {
    ...form,
    ...Object.fromEntries([...named, ...on]),
    layout: layout === 'inline' || layout === 'v' ? layout : 'unknown',
    camInHead: camAnswers.find((answer) => answer === cam) ?? 'unknown',
    engine: recordFrom(engineFigureKeys),
    figures: recordFrom(castingFigureKeys),
  }
}
