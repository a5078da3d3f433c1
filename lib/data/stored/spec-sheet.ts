import { z } from 'zod'
import { cutKinds } from '@/lib/core/route/step-ids'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type {
  ChamberPicture,
  Figure,
  ShopBlock,
  SpecChamber,
  SpecChambers,
  SpecCut,
  SpecDeclined,
  SpecEarlier,
  SpecFlow,
  SpecFlowPoint,
  SpecFlowRow,
  SpecGroup,
  SpecLine,
  SpecSheetData,
  SpecValveRow,
  SpecValves,
  SpecWaiver,
} from '@/lib/core/spec/spec-sheet'
import { storedObject, type Fields } from './stored-json'

const text = z.string()
const texts = z.array(text)
const textOrNull = text.nullable()
const edge = z.enum(['intake', 'exhaust'])

/** The shop at the head of a paper. */
export const shopFields = z.object({
  name: text,
  lines: texts,
  logo: z.object({ sha256: text, widthPx: z.number(), heightPx: z.number() }).optional(),
} satisfies Fields<ShopBlock>)

const drawing = z.object({
  chambers: z.number(),
  flatDeck: z
    .object({
      valves: z.array(
        z.object({ across: z.number(), widthShare: z.number() } satisfies Fields<
          NonNullable<HeadDrawing['flatDeck']>['valves'][number]
        >),
      ),
      injectorAcross: z.number().nullable(),
    } satisfies Fields<NonNullable<HeadDrawing['flatDeck']>>)
    .optional(),
  cutKind: z.enum(cutKinds),
  deepEdge: edge.nullable(),
  edgeDepths: z.object({ intake: textOrNull, exhaust: textOrNull }),
  touched: z.object({ acrossShare: z.number(), alongShare: z.number(), words: text }).optional(),
  cornerReadings: z.object({
    'intake-1': textOrNull,
    'exhaust-1': textOrNull,
    'intake-2': textOrNull,
    'exhaust-2': textOrNull,
  }),
  chamberReadings: z.array(textOrNull),
  bolts: z.array(
    z.object({
      across: z.number(),
      along: z.number(),
      long: z.boolean(),
      slotted: z.boolean(),
      label: text.optional(),
    } satisfies Fields<HeadDrawing['bolts'][number]>),
  ),
  slotToward: edge.nullable(),
  slotsAre: z.enum(['cut', 'needed']).optional(),
  slotNote: text.optional(),
} satisfies Fields<HeadDrawing>)

const volumes = z.array(z.number().nullable())
const chambers = z.object({
  rows: z.array(
    z.object({
      chamber: text,
      beforeCc: textOrNull,
      afterCc: textOrNull,
      remark: text,
    } satisfies Fields<SpecChamber>),
  ),
  meanBeforeCc: textOrNull,
  meanAfterCc: textOrNull,
  spreadBeforeCc: textOrNull,
  spreadAfterCc: textOrNull,
  target: textOrNull,
  beforeWith: text,
  afterWith: text,
  picture: z
    .object({
      beforeCc: volumes,
      afterCc: volumes,
      target: z.object({ cc: z.number(), toleranceCc: z.number() }).nullable(),
    } satisfies Fields<ChamberPicture>)
    .optional(),
} satisfies Fields<SpecChambers>)

const line = z.object({
  label: text,
  value: text,
  wanted: z.object({ label: z.enum(['wanted', 'limit']), value: text }).optional(),
} satisfies Fields<SpecLine>)

const points = z.array(z.object({ liftIn: z.number(), flowCfm: z.number().nullable() } satisfies Fields<SpecFlowPoint>))
const flowRows = z.array(
  z.object({
    lift: text,
    before: textOrNull,
    after: textOrNull,
    diffCfm: textOrNull,
    diffPercent: textOrNull,
    note: text,
  } satisfies Fields<SpecFlowRow>),
)
const flow = z.object({
  port: edge,
  title: text,
  beforePoints: points,
  afterPoints: points,
  rows: flowRows,
  means: flowRows,
  beforeConditions: text,
  afterConditions: text,
  notLike: texts,
} satisfies Fields<SpecFlow>)

const valveRow = z.object({ name: text, cells: texts } satisfies Fields<SpecValveRow>)

const specSheet = z.object({
  shape: z.literal(1),
  language: text,
  shop: shopFields,
  revision: z.number(),
  revisionReason: text,
  earlier: z
    .array(
      z.object({
        revision: z.number(),
        reason: text,
        releasedBy: text,
        releasedAt: text,
      } satisfies Fields<SpecEarlier>),
    )
    .optional(),
  outcome: z.enum(['released', 'returned as is']),
  releasedBy: text,
  releasedAt: text,
  jobNumber: text,
  customer: text,
  engine: text,
  tag: text,
  casting: text,
  marks: text,
  side: textOrNull,
  pairTags: texts,
  asked: texts,
  done: texts,
  notDone: texts,
  headline: z.array(z.object({ label: text, value: text, unit: text, note: text } satisfies Fields<Figure>)),
  drawing,
  chambers: chambers.nullable(),
  cuts: z.array(
    z.object({ what: text, planned: textOrNull, measured: textOrNull, how: text, by: text } satisfies Fields<SpecCut>),
  ),
  removedSinceNew: text,
  compression: z.object({ before: textOrNull, after: textOrNull, needs: text }).nullable(),
  valves: z
    .object({
      columns: z.array(z.object({ label: text, unit: text } satisfies Fields<SpecValves['columns'][number]>)),
      wanted: z.array(valveRow),
      rows: z.array(valveRow),
      note: text,
    } satisfies Fields<SpecValves>)
    .optional(),
  groups: z.array(z.object({ title: text, lines: z.array(line) } satisfies Fields<SpecGroup>)),
  flow: z.array(flow),
  waivers: z.array(z.object({ what: text, reason: text, by: text, at: text } satisfies Fields<SpecWaiver>)),
  declined: z.array(z.object({ what: text, how: text } satisfies Fields<SpecDeclined>)),
  cutterMarks: text,
  cautions: texts,
  notes: texts,
} satisfies Fields<SpecSheetData>) satisfies z.ZodType<SpecSheetData>

export const releaseFacts = storedObject<SpecSheetData>('Release.facts', specSheet)
