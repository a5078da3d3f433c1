import type { Actor } from '@/lib/core/access/roles'
import { keepEstimateSchema, type KeepEstimateForm } from '@/lib/schemas/bench'
import { emptyBench } from '@/lib/schemas/bench-question'
import { keepEstimate } from '@/lib/use-cases/cut-bench/keep-estimate'
import type { DemoCastings } from './castings'

type Kept = Pick<KeepEstimateForm, 'wayId' | 'forWhom' | 'note'> & {
  readonly casting: keyof DemoCastings
  readonly question: Partial<KeepEstimateForm['question']>
}

/** Asked on the telephone and not booked yet. Everybody and every engine is invented. */
const asked: readonly Kept[] = [
  {
    casting: 'wedge',
    wayId: 'own:angle-flat',
    forWhom: 'Linnea Strand',
    note: 'Please bring the block’s deck height when you drop the heads off.',
    question: {
      presentCc: '64.1 64.2 64.0 63.9',
      measured: true,
      used: false,
      targetCc: '54',
      stopAtIn: '0.020',
      layout: 'v',
      camInHead: 'no',
      engine: {
        boreIn: '4.060',
        strokeIn: '3.410',
        cylinders: '8',
        bankAngleDeg: '90',
        gasketBoreIn: '4.150',
        gasketThicknessIn: '0.039',
        deckClearanceIn: '0.005',
        pistonDishCc: '4.5',
        intakeLiftIn: '0.520',
        exhaustLiftIn: '0.520',
      },
    },
  },
  {
    casting: 'inlineFour',
    wayId: 'own:flat',
    forWhom: 'Barnaby Osk',
    note: '',
    question: {
      presentCc: '48.5',
      used: true,
      goneIn: '0.004',
      targetCc: '47.5',
      layout: 'inline',
      camInHead: 'yes',
    },
  },
]

export async function seedEstimates(actor: Actor, castings: DemoCastings, now: Date): Promise<void> {
  for (const { casting, question, ...kept } of asked) {
    const input = keepEstimateSchema.parse({
      ...kept,
      angleIn: null,
      question: { ...emptyBench(castings[casting]), ...question },
    })
    await keepEstimate(actor, input, { now })
  }
}
