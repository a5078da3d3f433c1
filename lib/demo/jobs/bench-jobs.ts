import { camInHeadFour, customer, oldV, ordered, price, streetV, trackV, unknownV } from './bookings'
import { refreshWanted } from '../wanted'
import { ago, on, type Story } from './story'

/** Booked, on its way. */
export const expectedPair: Story = (job) => [
  on(1, '16:20', () =>
    job.book(
      {
        customer: customer('Juno Farrant', '555-0104'),
        engine: streetV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size'),
        targetCc: '60.0',
        prices: [price('Cut to size, pair', '240.00')],
        promiseOn: job.clock.day(13),
        note: 'Brings them by herself.',
      },
      ['left', 'right'].map((side) => ({ castingId: job.ground.castings.wedge, side })),
    ),
  ),
]

/** In the door this hour: nothing but checked in. */
export const justIn: Story = (job) => [
  ago(55, () =>
    job.book(
      {
        customer: customer('Eamon Birchall', '555-0153'),
        engine: camInHeadFour,
        preset: 'refresh',
        ordered: ordered('refresh'),
        prices: [price('Refresh', '380.00')],
        promiseOn: job.clock.day(7),
      },
      [
        {
          castingId: job.ground.castings.inlineFour,
          overheated: true,
          cameAssembled: true,
          side: 'the only head',
        },
      ],
    ),
  ),
  ago(20, () =>
    job.checkIn(0, {
      condition: 'worn',
      'came-with': 'cam, followers and caps in it, all the customer’s',
      photo: 'no photo: tablet on the charger',
    }),
  ),
]

/** On the measuring bench: half the chambers read. */
export const beingMeasured: Story = (job) => [
  on(3, '11:30', () =>
    job.book(
      {
        customer: customer('Lucan Whitmarsh', '555-0120'),
        engine: trackV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', [], ['flow-before', 'flow-after']),
        targetCc: '61.5',
        prices: [price('Cut to size, pair', '240.00')],
        promiseOn: job.clock.day(9),
      },
      ['left', 'right'].map((side) => ({ castingId: job.ground.castings.wedge, side, stamp: `LW ${side}` })),
    ),
  ),
  on(2, '08:40', () => job.driveTo(0, 'chambers')),
  on(2, '14:00', () => job.driveTo(1, 'crack')),
  ago(30, () =>
    job.read(0, 'chambers', { cc: { '1': '64.2', '2': '63.9' }, 'valves-used': 'shop', 'plug-used': 'shop' }),
  ),
]

/** Came back after the flat cut: a seat leaks, and the shop pays. */
export const comeback =
  (headIdOf: () => string): Story =>
  (job) => [
    on(3, '08:50', () =>
      job.book(
        {
          customer: customer('Wren Calloway', '555-0171', { email: 'wren@calloway.example' }),
          engine: streetV,
          preset: 'seat-or-guide',
          ordered: ordered('seat-or-guide', [], ['guides']),
          promiseOn: job.clock.day(4),
          urgent: true,
          note: 'No charge.',
        },
        [
          {
            headId: headIdOf(),
            castingId: job.ground.castings.wedge,
            side: 'left',
            comeback: true,
            comebackCause: 'Exhaust valve of chamber 4 leaks: seat not fully concentric',
            comebackPays: 'the shop',
          },
        ],
      ),
    ),
    on(2, '09:30', () => job.driveTo(0, 'seat-work')),
    ago(70, () => job.begin(0, 'seat-work')),
  ]

/** Everything is ready but the valves. */
export const waitingForValves: Story = (job) => [
  on(10, '10:00', () =>
    job.book(
      {
        customer: customer('Delphine Ruddock', '555-0181'),
        engine: camInHeadFour,
        preset: 'refresh',
        ordered: ordered('refresh', ['valves']),
        wanted: refreshWanted,
        prices: [price('Refresh', '380.00'), price('Exhaust valves', '21.40', '4')],
        promiseOn: job.clock.day(1),
        partsPlace: 'Tray 7',
      },
      [{ castingId: job.ground.castings.inlineFour, cameAssembled: true, side: 'the only head' }],
    ),
  ),
  on(9, '08:30', () => job.driveTo(0, 'seat-work')),
  on(7, '15:40', () =>
    job.wait(0, 'seat-work', {
      what: 'four exhaust valves',
      fromWhom: 'Grayfen Castings, parts desk',
      promisedOn: job.clock.day(-1),
    }),
  ),
  on(7, '15:50', () =>
    job.buy(job.ground.vendors.castings, job.clock.day(-1), {
      what: 'exhaust valve, 1.300 in',
      pieces: '4',
      cost: '13.80',
    }),
  ),
]

/** Something was seen that nobody ordered; the customer has not said yet. */
export const findingOpen: Story = (job) => [
  on(6, '13:15', () =>
    job.book(
      {
        customer: customer('Barnaby Keld', '555-0139'),
        engine: oldV,
        preset: 'refresh',
        ordered: ordered('refresh', [], ['springs']),
        prices: [price('Refresh', '340.00')],
        promiseOn: job.clock.day(4),
      },
      [{ castingId: job.ground.castings.old, cameAssembled: true, side: 'left', stamp: 'K 2' }],
    ),
  ),
  on(5, '08:20', () => job.driveTo(0, 'seat-work')),
  on(3, '11:10', async () => {
    const { findingId } = await job.finding(
      0,
      'seat-work',
      'Guides 2 and 3 exhaust worn bell-mouthed, .006 loose. Seats will not hold on them.',
    )
    await job.photo(0, { stepId: 'seat-work', findingId, caption: 'Exhaust guide of chamber 2' }, { ringed: 2 })
    await job.ask(findingId, {
      price: '120.00',
      tax: '8.25',
      addsWork: ['guides'],
      how: 'by phone, wants to think it over',
    })
  }),
]

/** Cut too deep: nothing goes on until the owner has decided. */
export const cutTooDeep: Story = (job) => [
  on(11, '09:00', () =>
    job.book(
      {
        customer: customer('Thane Greaves', '555-0177'),
        engine: unknownV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', [], ['flow-before', 'flow-after']),
        targetCc: '55.0',
        prices: [price('Cut to size, one head', '130.00')],
        promiseOn: job.clock.day(8),
      },
      [{ castingId: job.ground.castings.closed, stamp: 'TG', side: 'right' }],
    ),
  ),
  on(10, '08:30', () => job.driveTo(0, 'flat-cut')),
  on(8, '11:20', () => job.plan({ kind: 'flat' }, { by: 'Thane Greaves', how: 'by telephone' })),
  on(2, '10:30', async () => {
    await job.read(0, 'flat-cut', { 'cut-depth': '.0285', cc: { 'at-stop': '55.9', 'at-size': '53.9' } })
    const { holdId } = await job.hold(
      0,
      'flat-cut',
      'Cut too deep: dial slipped on the last pass, chamber 1 is 53.9, target 55.0.',
    )
    await job.photo(0, { stepId: 'flat-cut', holdId, caption: 'Chamber 1 after the pass' }, { ringed: 1 })
  }),
]

/** Cracked: it goes back as it is, and the paper says what was not done. */
export const crackedReturned: Story = (job) => [
  on(15, '14:00', () =>
    job.book(
      {
        customer: customer('Rosamund Ickes', '555-0188'),
        engine: oldV,
        preset: 'refresh',
        ordered: ordered('refresh'),
        prices: [price('Refresh', '340.00')],
        promiseOn: job.clock.day(-6),
      },
      [{ castingId: job.ground.castings.old, overheated: true, side: 'right', stamp: 'RI' }],
    ),
  ),
  on(14, '08:40', async () => {
    await job.driveTo(0, 'crack')
    await job.read(0, 'crack', { crack: 'crack' })
    await job.holdAndDecide(0, 'crack', 'Crack from the exhaust seat of chamber 2 into the water jacket.', {
      decision: 'return-as-is',
      note: 'Not worth welding at this age. Rosamund wants it back.',
    })
  }),
  on(12, '10:10', async () => {
    await job.returnAsIs(0, 'Cracked through at chamber 2; the customer takes it back.')
    await job.charge('Stripped, washed and crack checked', '85.00', 'Refresh not done: the head is cracked')
    await job.invoice()
  }),
  on(11, '17:20', () =>
    job.handOver([{ at: 0, side: 'right' }], 'Rosamund Ickes', '', 'Known customer, pays at the end of the month'),
  ),
]

/** Beyond mending: the owner decides that it is scrap. */
export const crackedScrapped: Story = (job) => [
  on(13, '15:30', () =>
    job.book(
      {
        customer: customer('Lionel Sparrock', '555-0114'),
        engine: oldV,
        preset: 'refresh',
        ordered: ordered('refresh'),
        promiseOn: job.clock.day(-3),
      },
      [
        {
          castingId: job.ground.castings.old,
          side: 'left',
          stamp: 'LS',
          marks: 'casting mark 76 and a bell',
        },
      ],
    ),
  ),
  on(12, '08:35', async () => {
    await job.driveTo(0, 'crack')
    await job.holdAndDecide(0, 'crack', 'Deck cracked through between chambers 3 and 4, end to end.', {
      decision: 'scrap',
      note: 'Nobody can weld this. Lionel wants the valves back, not the head.',
    })
  }),
]
