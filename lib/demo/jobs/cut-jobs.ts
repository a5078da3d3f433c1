import { customer, ordered, price, streetV, trackV, camInHeadFour, unknownV } from './bookings'
import { ago, on, type Story } from './story'

/** Flat cut of a pair, from the counter to the customer's hands; one chamber was misread and put right. */
export const flatPairGone: Story = (job) => {
  const { castings } = job.ground
  const heads = (of: (at: number) => Promise<unknown>) => async () => {
    await of(0)
    await of(1)
  }
  return [
    on(27, '08:40', () =>
      job.book(
        {
          customer: customer('Wren Calloway', '555-0171', { email: 'wren@calloway.example' }),
          engine: streetV,
          preset: 'cut-to-size',
          ordered: ordered('cut-to-size'),
          targetCc: '61.0',
          prices: [price('Cut to size, pair', '240.00'), price('Flow runs', '85.00', '2')],
          deposit: '150.00',
          depositMethod: 'card',
          promiseOn: job.clock.day(-15),
          partsPlace: 'Shelf B3',
          note: 'Wants both heads the same, and the sheet for the engine book.',
        },
        [
          { castingId: castings.wedge, stamp: 'WC L', side: 'left', rackPlace: 'Rack 2 upper' },
          { castingId: castings.wedge, stamp: 'WC R', side: 'right', rackPlace: 'Rack 2 upper' },
        ],
      ),
    ),
    on(
      26,
      '09:10',
      heads((at) => job.driveTo(at, 'chambers')),
    ),
    on(25, '08:30', async () => {
      await job.tick(0, 'chambers', { cc: { '3': '46.1' } })
      await job.correct(
        0,
        { stepId: 'chambers', kind: 'cc', point: '3' },
        '64.1',
        'Digits turned round on the tablet; the burette sheet says 64.1.',
      )
      await job.driveTo(1, 'seat-before')
    }),
    on(25, '13:00', () => job.plan({ kind: 'flat' }, { by: 'Wren Calloway', how: 'by telephone' })),
    on(
      24,
      '08:15',
      heads((at) => job.driveTo(at, 'flat-cut')),
    ),
    on(
      23,
      '08:10',
      heads((at) => job.driveThrough(at, 'deburr')),
    ),
    on(21, '08:20', () => job.driveTo(0, 'final')),
    on(20, '08:20', async () => {
      await job.driveTo(1, 'flow-after')
      await job.waive(
        1,
        'flow-after',
        'Bench away for its test plate. Wren agreed on the telephone: one head is enough.',
      )
      await job.driveTo(1, 'final')
    }),
    on(
      19,
      '09:00',
      heads((at) => job.tick(at, 'final')),
    ),
    on(
      19,
      '15:10',
      heads((at) => job.release(at)),
    ),
    on(19, '15:40', () => job.invoice()),
    on(18, '10:05', async () => {
      await job.call('Told Wren both are ready; she comes by at noon.')
      await job.pay('293.83', 'card')
      await job.handOver(
        [
          { at: 0, side: 'left', partsBack: 'checking springs not ours, given back' },
          { at: 1, side: 'right' },
        ],
        'Wren Calloway',
      )
    }),
  ]
}

/** Flat cut to size, in the middle of it: one head stands on the mill at the advised stop, its mate waits. */
export const flatPairAtMill: Story = (job) => [
  on(6, '10:20', () =>
    job.book(
      {
        customer: customer('Idris Mallow', '555-0135'),
        engine: trackV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', [], ['flow-after']),
        targetCc: '60.5',
        classFlatOnly: true,
        classMinCc: '60.0',
        prices: [price('Cut to size, pair', '240.00')],
        promiseOn: job.clock.day(8),
        urgent: true,
        note: 'Class rule: flat cuts only, 60.0 cc least.',
      },
      ['left', 'right'].map((side) => ({
        castingId: job.ground.castings.wedge,
        stamp: `IM ${side[0]?.toUpperCase()}`,
        side,
        rackPlace: 'Rack 1 lower',
      })),
    ),
  ),
  on(5, '08:30', async () => {
    await job.driveTo(0, 'flat-cut', { 'flow-before': lifted })
    await job.driveTo(1, 'flat-cut')
  }),
  on(2, '09:40', () => job.plan({ kind: 'flat' }, { by: 'Idris Mallow', how: 'at the counter' })),
  ago(85, () => job.begin(0, 'flat-cut')),
  ago(40, () => job.read(0, 'flat-cut', { 'cut-depth': '.0155', cc: { 'at-stop': '61.6' } })),
]

/** A lift that could not be flowed says why. */
const lifted = {
  flow: {
    'intake@0.600': { notTaken: 'retainer meets the seal' },
    'exhaust@0.600': { notTaken: 'retainer meets the seal' },
  },
}

/** As little as makes it flat; done, and waiting to be released. */
export const cleanUpOnly: Story = (job) => [
  on(9, '11:00', () =>
    job.book(
      {
        customer: customer('Petra Lindqvist-Oare', '555-0108'),
        engine: camInHeadFour,
        preset: 'refresh',
        ordered: [{ work: 'flat-cut', note: 'only what it needs' }],
        finishAsked: '30 µin or better, steel gasket',
        prices: [price('Clean-up cut', '95.00')],
        promiseOn: job.clock.day(4),
      },
      [
        {
          castingId: job.ground.castings.inlineFour,
          stamp: '',
          marks: 'paint mark, green',
          side: 'the only head',
        },
      ],
    ),
  ),
  on(8, '08:20', () => job.driveTo(0, 'flat-cut')),
  on(6, '09:00', () =>
    job.plan({ kind: 'clean-up', stopAtIn: '.008' }, { by: 'Petra Lindqvist-Oare', how: 'by telephone' }),
  ),
  on(4, '08:40', () => job.driveThrough(0, 'final')),
]

/** Two heads with porting, before the saw dust settles: one on the port bench, one waiting for it. */
export const portAndFlow: Story = (job) => [
  on(7, '14:30', () =>
    job.book(
      {
        customer: customer('Corwin Aldous', '555-0126', { email: 'corwin@aldous.example' }),
        engine: unknownV,
        preset: 'port-and-flow',
        ordered: ordered('port-and-flow', ['flow-after-port']),
        prices: [
          price('Port work, a head', '620.00', '2'),
          price('Flow runs', '85.00', '4'),
          price('Setting up', '72.00', '1.5'),
          price('Gaskets and small parts', '18.00', '2', '6.5'),
        ],
        deposit: '400.00',
        depositMethod: 'transfer',
        promiseOn: job.clock.day(9),
      },
      ['left', 'right'].map((side) => ({
        castingId: job.ground.castings.closed,
        side,
        chamberForm: 'machined' as const,
        rackPlace: 'Port bench shelf',
      })),
    ),
  ),
  on(7, '14:50', () => job.discount('60.00', 'third pair this year')),
  on(6, '08:50', async () => {
    await job.driveTo(0, 'port')
    await job.driveTo(1, 'port')
  }),
  on(1, '13:20', () => job.begin(0, 'port')),
]

/** Bought in, already cut by its maker: nothing was measured before, so nothing is claimed of it. */
export const boughtInCut: Story = (job) => [
  on(12, '09:30', () =>
    job.book(
      {
        customer: customer('Sable Ostrander', '555-0190'),
        engine: streetV,
        preset: 'bought-in',
        ordered: ordered('bought-in'),
        targetCc: '58.0',
        prices: [price('Head, 58 cc, cut by its maker', '748.50', '2'), price('Fit out and check', '310.00')],
        deposit: '900.00',
        depositMethod: 'card',
        promiseOn: job.clock.day(6),
        partsPlace: 'Shelf A1',
      },
      ['left', 'right'].map((side) => ({
        castingId: job.ground.castings.wedge,
        source: 'bought-cut' as const,
        used: false,
        side,
        ownedBy: 'the shop until paid',
        cameWith: 'bare, in the maker’s box',
      })),
    ),
  ),
  on(12, '10:05', () => job.buy(job.ground.vendors.castings, job.clock.day(-4))),
  on(4, '14:40', () => job.arrive(0, 1)),
  on(3, '09:15', async () => {
    await job.driveThrough(0, 'thickness')
    await job.driveThrough(1, 'thickness')
  }),
  on(2, '10:00', () => job.driveThrough(0, 'finished')),
]

/** New castings for a customer whose own were beyond saving: ordered, promised, not here yet. */
export const boughtOnOrder: Story = (job) => [
  on(3, '11:20', () =>
    job.book(
      {
        customer: customer('Hesper Dunmow', '555-0162'),
        engine: trackV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', [], ['flow-before']),
        targetCc: '61.0',
        prices: [price('Head, 64 cc, bare', '612.00', '2'), price('Cut to size, pair', '240.00')],
        deposit: '600.00',
        depositMethod: 'card',
        promiseOn: job.clock.day(13),
        partsPlace: 'Shelf C1',
      },
      ['left', 'right'].map((side) => ({
        castingId: job.ground.castings.wedge,
        source: 'bought' as const,
        used: false,
        side,
        ownedBy: 'the shop until paid',
      })),
    ),
  ),
  on(3, '11:40', () => job.buy(job.ground.vendors.castings, job.clock.day(2))),
]

/**
 * A head on its second cut: somebody took 12 thou at the intake edge and 48 at the exhaust edge before it came here. The
 * corners say so, and its seats lie that much nearer to the deck than the casting's record has them.
 */
export const secondCut: Story = (job) => [
  ago(230, () =>
    job.book(
      {
        customer: customer('Perrin Oakhollow', '555-0149'),
        engine: streetV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', [], ['flow-before', 'flow-after']),
        targetCc: '56.5',
        prices: [price('Cut to size, a head', '120.00')],
        promiseOn: job.clock.day(8),
        note: 'Cut before, nobody knows by whom. See what is left before anything is taken.',
      },
      [
        {
          castingId: job.ground.castings.wedge,
          stamp: 'PO',
          side: 'left',
          presentCc: '58.2',
          rackPlace: 'Rack 1 upper',
        },
      ],
    ),
  ),
  ago(200, () => job.driveTo(0, 'flat-cut', cutBefore)),
  ago(110, () => job.plan({ kind: 'flat' }, { by: 'Perrin Oakhollow', how: 'by telephone' })),
]

const cutBefore = {
  thickness: {
    thickness: { 'intake-1': '4.2352', 'exhaust-1': '4.2049', 'intake-2': '4.2348', 'exhaust-2': '4.2051' },
    'removed-before': '.045',
  },
  'seat-before': { 'seat-depth': { '1-intake': '.074', '1-exhaust': '.107' } },
}
