import { camAnswerOf, type CamAnswer } from '@/lib/core/engine/cam-answer'
import { engineFigures, engineFigureKeys, type EngineFigureKey } from '@/lib/core/engine/figures'
import type { VisitRecord } from '@/lib/data/visit-records'

export type EngineView = {
  readonly label: string
  readonly layout: 'inline' | 'v' | 'unknown'
  readonly camInHead: CamAnswer
  readonly figures: readonly {
    readonly key: EngineFigureKey
    readonly label: string
    readonly text: string
    readonly unit: string
  }[]
}

export function engineView(engine: VisitRecord['job']['engine']): EngineView {
  return {
    label: engine?.label ?? '',
    layout: (engine?.layout ?? 'unknown') as EngineView['layout'],
    camInHead: engine ? camAnswerOf(engine) : 'unknown',
    figures: engineFigureKeys.flatMap((key) => {
      const figure = engine?.figures.find((entry) => entry.key === key)
      return figure ? [{ key, label: engineFigures[key].label, text: figure.text, unit: figure.unit }] : []
    }),
  }
}
