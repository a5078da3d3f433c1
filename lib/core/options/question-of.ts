import type { ChamberShape } from '../casting/chamber-shape'
import type { CastingFacts } from '../casting/figures'
import type { HeadNow } from '../cut/plan-types'
import type { EngineFacts } from '../engine/figures'
import { portOf, valveCountsOf, valvePoint, valvesOf, type Port } from '../readings/valves'
import { rateOfRecord } from '../rate/rate-of-record'
import { thouPerCc, usualThouPerCc } from '../rate/rate'
import type { BenchQuestion, BenchShop, Start } from './bench-types'
import type { EarlierFlow } from './earlier-flow'

/** A casting as the cut bench works with it: its record, what the shop learned of it, and how it can be bought. */
export type BenchCasting = {
  readonly id: string
  readonly name: string
  readonly chambers: number
  readonly chamberShape: ChamberShape
  readonly deepEdge: 'intake' | 'exhaust'
  readonly facts: CastingFacts
  /** Learned from the shop's own cuts; null: none of this casting is on record. */
  readonly learned: LearnedRate | null
  readonly variants: readonly BenchVariant[]
  /** What the shop's own cuts of it did to flow. */
  readonly flowed: readonly EarlierFlow[]
}

export type LearnedRate = {
  readonly thouPerCc: number
  readonly words: string
  readonly proven: boolean
}

export type BenchVariant = {
  readonly id: string
  readonly name: string
  readonly nominalCc: number | null
  readonly supply: 'stock' | 'special'
  readonly cutByMaker: boolean
  readonly leadDays: number | null
  readonly costMinor: number | null
}

/** A question as it was typed, in the core's units; null: not typed. */
export type Asked = {
  /** One a chamber, or one figure for all; empty: the record's nominal volume is taken. */
  readonly presentCc: readonly number[]
  readonly measured: boolean
  readonly used: boolean
  /** Metal gone since new, where somebody knows. */
  readonly goneIn: number | null
  readonly targetCc: number | null
  readonly stopAtIn: number | null
  readonly sinkIn: number | null
  /** Of a flat-deck head: wanted thickness, and what its valves and injectors read now. */
  readonly thicknessIn?: number | null
  readonly thicknessNowIn?: number | null
  readonly recessionIn?: Readonly<Record<Port, number | null>>
  readonly protrusionIn?: number | null
  readonly classFlatOnly: boolean
  readonly classMinCc: number | null
  readonly classMaxCutIn: number | null
  readonly engine: EngineFacts
  /** Of this head or casting, typed over what the record says. */
  readonly figures: CastingFacts
}

/** The question with everything it is answered from: the typed figures, the casting's record and the shop's own. */
export function questionOf(asked: Asked, casting: BenchCasting | null, shop: BenchShop): BenchQuestion {
  const facts = { ...casting?.facts, ...asked.figures }
  const rate = rateFor(facts, asked.figures, casting)
  const common = {
    chambers: casting?.chambers ?? 4,
    deepEdge: casting?.deepEdge ?? ('exhaust' as const),
    casting: facts,
    flatDeck: casting?.chamberShape === 'flat-deck',
    ...rate,
  }
  const own: Start = {
    ...common,
    id: 'own',
    name: ownName(asked, casting),
    supply: 'own',
    cutByMaker: false,
    used: asked.used,
    heads: [common.flatDeck ? flatDeckHead(asked, facts, common.chambers) : ownHead(asked, facts)],
    presentNominal: !asked.measured || asked.presentCc.length === 0,
    leadDays: 0,
    costMinor: 0,
  }
  return {
    targetCc: asked.targetCc,
    stopAtIn: asked.stopAtIn,
    sinkIn: asked.sinkIn ?? 0,
    thicknessIn: asked.thicknessIn ?? null,
    engine: asked.engine,
    classFlatOnly: asked.classFlatOnly,
    classMinCc: asked.classMinCc,
    classMaxCutIn: asked.classMaxCutIn,
    starts: [own, ...(casting?.variants ?? []).map((variant) => bought(common, variant))],
    shop,
  }
}

function bought(
  common: Pick<Start, 'chambers' | 'flatDeck' | 'deepEdge' | 'casting' | 'thouPerCc' | 'rateWords' | 'rateProven'>,
  { id, name, nominalCc, supply, cutByMaker, leadDays, costMinor }: BenchVariant,
): Start {
  const { thicknessNewIn } = common.casting
  const head: HeadNow = {
    tag: name,
    chambersCc: nominalCc === null || common.flatDeck ? [] : [nominalCc],
    // A head that its maker cut is not as thick as a new one, and nobody has measured it.
    thicknessIn: cutByMaker ? null : (thicknessNewIn ?? null),
    removedBeforeIn: cutByMaker ? null : 0,
  }
  return {
    ...common,
    id,
    name,
    supply,
    cutByMaker,
    leadDays,
    costMinor,
    used: false,
    heads: [head],
    presentNominal: true,
  }
}

const ownName = ({ presentCc }: Asked, casting: BenchCasting | null): string =>
  presentCc.length > 0 || casting === null ? 'The head at hand' : `${casting.name}, as the record has it`

/** Valves of one kind as the customer says, all alike: no burette, no chamber. */
function flatDeckHead(asked: Asked, facts: CastingFacts, chambers: number): HeadNow {
  const recession = valvesOf(chambers, valveCountsOf(facts))
    .map(valvePoint)
    .flatMap((valve) => {
      const valueIn = asked.recessionIn?.[portOf(valve)] ?? null
      return valueIn === null ? [] : [[valve, valueIn] as const]
    })
  const { protrusionIn = null } = asked
  const own = ownHead(asked, facts)
  const nowIn = asked.thicknessNowIn ?? null
  return {
    ...own,
    ...(nowIn === null ? {} : { thicknessIn: nowIn, removedBeforeIn: own.removedBeforeIn ?? goneBy(facts, nowIn) }),
    chambersCc: [],
    flatDeck: {
      recessionIn: Object.fromEntries(recession),
      protrusionIn: protrusionIn === null ? {} : { '1': protrusionIn },
    },
  }
}

/** What is gone by the thickness; null while nobody knows how thick the casting was new. */
const goneBy = ({ thicknessNewIn }: CastingFacts, nowIn: number): number | null =>
  thicknessNewIn === undefined ? null : Math.max(0, thicknessNewIn - nowIn)

function ownHead({ presentCc, goneIn, used }: Asked, facts: CastingFacts): HeadNow {
  const removedBeforeIn = goneIn ?? (used ? null : 0)
  const { thicknessNewIn, nominalCc } = facts
  return {
    tag: 'the head',
    chambersCc: presentCc.length > 0 ? presentCc : nominalCc === undefined ? [] : [nominalCc],
    thicknessIn: thicknessNewIn === undefined || removedBeforeIn === null ? null : thicknessNewIn - removedBeforeIn,
    removedBeforeIn,
  }
}

/** What was learned holds for the record's chamber; a figure typed over it makes it another one. */
function rateFor(
  facts: CastingFacts,
  typed: CastingFacts,
  casting: BenchCasting | null,
): Pick<Start, 'thouPerCc' | 'rateWords' | 'rateProven'> {
  const typedOver = [typed.openingAreaIn2, typed.perimeterIn, typed.thouPerCc].some((figure) => figure !== undefined)
  if (casting?.learned && !typedOver) {
    const { thouPerCc, words, proven } = casting.learned
    return { thouPerCc, rateWords: words, rateProven: proven }
  }
  const rate = rateOfRecord(facts)
  if (!rate.ok) return { thouPerCc: usualThouPerCc, rateWords: priorWords.none, rateProven: false }
  return {
    thouPerCc: thouPerCc(rate.value).thouPerCc,
    rateWords: priorWords[rate.value.prior],
    rateProven: false,
  }
}

const priorWords = {
  outline: 'from the opening’s area, uncertainty ± 5 %',
  perimeter: 'from the perimeter, uncertainty ± 15 %',
  none: 'usual figure, not proven, uncertainty ± 25 %',
} as const
