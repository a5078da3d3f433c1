import { planInputs, planResults } from '@/lib/data/stored/plan'
import { stepDetail, type StepDetail } from '@/lib/data/stored/route-step'
import { releaseFacts } from '@/lib/data/stored/spec-sheet'

/** Columns of heads that were here long ago, as the program that reads them writes them. */

const plain = { why: null, reason: null, isNew: false, owes: [], outside: false, doneSeq: null, byVendor: null }

export const stepWaitingFor = (waitsFor: StepDetail['waitsFor']): string => stepDetail.write({ ...plain, waitsFor })

export const emptyPlanInputs = planInputs.write({})

/** The head is left as it is. */
export const planOfNoCut = planResults.write({
  ...{ kind: 'none', flatIn: 0, angleIn: 0, angleDeg: null, deepEdge: 'exhaust', deepestIn: 0, depthAtCentroidIn: 0 },
  ...{ thouPerCc: 6, rateWords: 'from the shop’s own cuts', presentMeanCc: 62, presentNominal: false, targetCc: 62 },
  ...{ predictedAfterCutCc: 62, predictedFinishedCc: 62, seatWorkGivesCc: 0, intakeSideIn: null, intakeRailsIn: null },
  ...{ ptvLossIntakeIn: null, ptvLossExhaustIn: null, compressionBefore: null, compressionAfter: null },
  ...{ needs: [], cautions: [] },
})

/** A sheet with little on it. */
export const plainSpecSheet = releaseFacts.write({
  ...{ shape: 1, language: 'en', shop: { name: 'Earlier shop', lines: [] }, revision: 1, revisionReason: '' },
  ...{ outcome: 'released', releasedBy: 'Earlier staff', releasedAt: '3 Mar 2026, 13:50', jobNumber: '25-0', tag: '' },
  ...{
    customer: 'Customer',
    engine: '',
    casting: '',
    marks: '',
    side: null,
    pairTags: [],
    asked: ['Chambers to 62 cc'],
  },
  ...{ done: ['Flat cut'], notDone: [], headline: [{ label: 'Chambers, mean', value: '64.0', unit: 'cc', note: '' }] },
  drawing: {
    ...{ chambers: 4, cutKind: 'none', deepEdge: null, edgeDepths: { intake: null, exhaust: null } },
    cornerReadings: { 'intake-1': null, 'exhaust-1': null, 'intake-2': null, 'exhaust-2': null },
    ...{ chamberReadings: ['64.0', '64.0', '64.0', '64.0'], bolts: [], slotToward: null },
  },
  ...{ chambers: null, cuts: [], removedSinceNew: 'new thickness unknown', compression: null, groups: [], flow: [] },
  ...{ waivers: [], declined: [], cutterMarks: '', cautions: [], notes: [] },
})
