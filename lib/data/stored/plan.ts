import { z } from 'zod'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { cutKinds } from '@/lib/core/route/step-ids'
import { cautions, cautionsAsSaid, seatGround } from './cut-cautions'
import { storedObject, type Fields } from './stored-json'

const figure = z.number()
const figureOrNull = figure.nullable()

const seatOnRecord = z.object({
  port: z.enum(['intake', 'exhaust']),
  tag: z.string(),
  marginIn: figure,
  ground: seatGround,
})

const flatDeck = z.object({
  wantedThicknessIn: figureOrNull,
  thicknessLeastIn: figureOrNull,
  heads: z.array(
    z.object({
      tag: z.string(),
      thicknessNowIn: figureOrNull,
      thicknessLeftIn: figureOrNull,
      valves: z.array(z.object({ valve: z.string(), beforeIn: figure, afterIn: figure })),
      injectors: z.array(z.object({ chamber: z.string(), beforeIn: figure, afterIn: figure })),
    }),
  ),
  beforeCc: figureOrNull,
  afterCc: figureOrNull,
})

const fields = {
  kind: z.enum(cutKinds),
  flatIn: figure,
  angleIn: figure,
  angleDeg: figureOrNull,
  deepEdge: z.enum(['intake', 'exhaust']),
  deepestIn: figure,
  depthAtCentroidIn: figure,
  thouPerCc: figure,
  rateWords: z.string(),
  rateProven: z.boolean().optional(),
  presentMeanCc: figureOrNull,
  presentNominal: z.boolean(),
  targetCc: figureOrNull,
  predictedAfterCutCc: figureOrNull,
  predictedFinishedCc: figureOrNull,
  seatWorkGivesCc: figure,
  intakeSideIn: figureOrNull,
  intakeRailsIn: figureOrNull,
  intakeFace: z.object({ deckEndIn: figure, coverEndIn: figure, gapIn: figure }).nullish(),
  wallDraft: z.object({ deg: figure, lessCc: figure }).nullish(),
  seats: z.array(seatOnRecord).optional(),
  flatDeck: flatDeck.nullish(),
  ptvLossIntakeIn: figureOrNull,
  ptvLossExhaustIn: figureOrNull,
  compressionBefore: figureOrNull,
  compressionAfter: figureOrNull,
  needs: z.array(z.string()),
  cautions,
} satisfies Fields<PlanRecord>

export const planResults = storedObject<PlanRecord>(
  'PlanVersion.results',
  z.object({ ...fields, cautions: cautionsAsSaid }),
  z.object(fields),
)

export const planRecordOf = (plan: { readonly id: string; readonly results: string }): PlanRecord =>
  planResults.read(plan.results, plan.id)

/** What a plan was worked out from. Only the sink as typed is read again; the rest stays on record. */
export type PlanInputsKept = {
  readonly choice?: { readonly sinkIn?: { readonly text: string } | null }
  readonly context?: object
}

const inputs = z.object({
  choice: z.looseObject({ sinkIn: z.looseObject({ text: z.string() }).nullish() }).optional(),
  context: z.looseObject({}).optional(),
} satisfies Fields<PlanInputsKept>) satisfies z.ZodType<PlanInputsKept>

export const planInputs = storedObject<PlanInputsKept>('PlanVersion.inputs', inputs)
