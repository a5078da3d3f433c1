import { camFacts } from '@/lib/core/engine/cam-answer'
import type { NewEngine } from '@/lib/data/booking'
import type { EngineInput } from '@/lib/schemas/job'

export const engineOf = (engine: EngineInput): NewEngine => ({
  label: engine.label,
  layout: engine.layout,
  ...camFacts(engine.camInHead),
  figures: engine.figures,
})
