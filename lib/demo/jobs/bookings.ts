import { emptyEngineFigures, orderOf, type BookJobForm } from '@/lib/schemas/job'
import type { Preset, WorkId } from '@/lib/core/route/step-ids'

/** Customers, engines and prices of the demo, as the counter types them. Every one is invented. */
type Customer = BookJobForm['customer']
type Engine = BookJobForm['engine']
type PriceLine = BookJobForm['prices'][number]

export const customer = (name: string, phone: string, more: Partial<Customer> = {}): Customer => ({
  id: '',
  name,
  phone,
  email: '',
  address: '',
  ...more,
})

const engine = (
  label: string,
  kind: Pick<Engine, 'layout' | 'camInHead'>,
  figures: Partial<Engine['figures']>,
): Engine => ({ label, ...kind, figures: { ...emptyEngineFigures(), ...figures } })

const pushrodV = { layout: 'v', camInHead: 'no' } as const

/** Street V engine with all its figures known. */
export const streetV = engine('5.8 street, pump petrol', pushrodV, {
  boreIn: '4.060',
  strokeIn: '3.410',
  cylinders: '8',
  bankAngleDeg: '90',
  gasketBoreIn: '4.150',
  gasketThicknessIn: '.041',
  deckClearanceIn: '.012',
  pistonDishCc: '5.0',
  intakeLiftIn: '.540',
  exhaustLiftIn: '.552',
  intakePtvIn: '.185',
  exhaustPtvIn: '.205',
})

/** The same family for the track: valve pockets only, less room over the piston. */
export const trackV = engine('5.9 late model', pushrodV, {
  boreIn: '4.090',
  strokeIn: '3.420',
  cylinders: '8',
  bankAngleDeg: '90',
  gasketBoreIn: '4.180',
  gasketThicknessIn: '.036',
  deckClearanceIn: '.005',
  pistonDishCc: '3.0',
  intakeLiftIn: '.610',
  exhaustLiftIn: '.615',
  intakePtvIn: '.150',
  exhaustPtvIn: '.175',
})

/** What a customer usually knows: what it is, and no figure of it. */
export const unknownV = engine('V, figures to follow', { layout: 'v', camInHead: 'no' }, {})

export const camInHeadFour = engine(
  '1.9 twin valve four',
  { layout: 'inline', camInHead: 'yes' },
  {
    boreIn: '3.190',
    strokeIn: '3.560',
    cylinders: '4',
    gasketThicknessIn: '.051',
  },
)

/** Its bowls and valve pockets are its dish. */
export const bowlFour = engine(
  '3.1 injected four',
  { layout: 'inline', camInHead: 'no' },
  {
    boreIn: '3.780',
    strokeIn: '4.210',
    cylinders: '4',
    gasketBoreIn: '3.860',
    gasketThicknessIn: '.049',
    deckClearanceIn: '-.012',
    pistonDishCc: '34.0',
    intakeLiftIn: '.390',
    exhaustLiftIn: '.395',
  },
)

export const oldV = engine('Old truck engine', pushrodV, { cylinders: '8' })

export const price = (text: string, unitPrice: string, quantity = '1', tax = '8.25'): PriceLine => ({
  text,
  quantity,
  unitPrice,
  tax,
})

/** A preset's lines without some, with others. */
export const ordered = (preset: Preset, more: readonly WorkId[] = [], without: readonly WorkId[] = []) => [
  ...orderOf(preset).filter((line) => !without.includes(line.work as WorkId)),
  ...more.map((work) => ({ work, note: '' })),
]
