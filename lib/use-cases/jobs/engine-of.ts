import type { NewEngine } from '@/lib/data/booking'
import type { EngineInput } from '@/lib/schemas/job'

const answers = { yes: true, no: false, unknown: null } as const

export const engineOf = (engine: EngineInput): NewEngine => ({
  label: engine.label,
  layout: engine.layout,
  camInHead: answers[engine.camInHead],
  figures: engine.figures,
})
