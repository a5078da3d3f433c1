import { customer, ordered, price, streetV, trackV, unknownV } from './bookings'
import { on, type Story } from './story'

/** Angle and flat together, out and back, finished and released: one head, its mate is somebody else's work. */
export const angledHeadReleased: Story = (job) => {
  const { castings, vendors } = job.ground
  return [
    on(30, '09:20', () =>
      job.book(
        {
          customer: customer('Ambrose Tilling', '555-0147', { email: 'ambrose@tilling.example' }),
          engine: trackV,
          preset: 'cut-to-size',
          ordered: ordered('cut-to-size', ['angle-cut']),
          targetCc: '54.0',
          prices: [price('Angle and flat cut', '280.00'), price('Flow runs', '85.00', '2')],
          deposit: '250.00',
          depositMethod: 'cash',
          promiseOn: job.clock.day(1),
          partsPlace: 'Shelf C2',
          note: 'To match the right-hand one he has at home: 54.0, measured there.',
        },
        [{ castingId: castings.wedge, stamp: 'AT L', side: 'left', rackPlace: 'Rack 3 upper' }],
      ),
    ),
    on(29, '08:30', () => job.driveTo(0, 'angle-cut')),
    on(27, '10:10', () =>
      job.plan(
        { kind: 'angle-flat', splitBy: 'flat', flatIn: '.020' },
        { by: 'Ambrose Tilling', how: 'at the counter' },
      ),
    ),
    on(26, '14:00', () =>
      job.send(
        { heads: [0], vendorId: vendors.angle, scope: ['angle-cut'], promisedOn: job.clock.day(-15) },
        { instructions: 'Deep at the exhaust edge. Leave the flat part for us.', freight: 'our van' },
      ),
    ),
    on(15, '08:20', () => job.cost('140.00', '0')),
    on(14, '10:30', () =>
      job.receive([0], ['angle-cut'], { typed: '63 EX', read: '63 thou angle part at the exhaust edge' }),
    ),
    on(14, '11:15', () => job.driveTo(0, 'flat-cut')),
    on(12, '08:10', () => job.driveThrough(0, 'deburr')),
    on(10, '08:20', () => job.driveThrough(0, 'final')),
    on(5, '16:00', () => job.release(0)),
    on(5, '16:20', () => job.invoice()),
    on(4, '09:05', async () => {
      await job.credit(['30.00', ''], 'Ready four days later than agreed')
      await job.call('Left word that it is ready.')
    }),
  ]
}

/** Cut to size by the vendor alone. Both heads are still there, past the day promised, and past the day promised after that. */
export const angledPairLate: Story = (job) => [
  on(19, '13:40', () =>
    job.book(
      {
        customer: customer('Halvard Pym', '555-0115'),
        engine: streetV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', ['angle-cut'], ['flow-before', 'flow-after']),
        targetCc: '57.0',
        prices: [price('Angle cut, pair', '460.00')],
        promiseOn: job.clock.day(3),
        urgent: true,
      },
      ['left', 'right'].map((side) => ({ castingId: job.ground.castings.wedge, side, stamp: `HP ${side}` })),
    ),
  ),
  on(18, '08:30', async () => {
    await job.driveTo(0, 'angle-cut')
    await job.driveTo(1, 'angle-cut')
  }),
  on(17, '11:00', () => job.plan({ kind: 'angle' }, { by: 'Halvard Pym', how: 'by telephone' })),
  on(16, '15:00', () =>
    job.send(
      {
        heads: [0, 1],
        vendorId: job.ground.vendors.angle,
        scope: ['angle-cut'],
        promisedOn: job.clock.day(-8),
        finishesToSize: true,
      },
      {
        instructions: 'Deep at the exhaust edge, to size: no flat part, nothing left for us.',
        freight: 'carrier',
        tracking: 'HP-2 of 2',
      },
    ),
  ),
  on(15, '09:10', () => job.accept('', 'They have the box.')),
  on(14, '11:30', () => job.cost('', '38.50')),
  on(8, '10:00', () => job.repromise(job.clock.day(-3), 'Spindle down; they say three more days.')),
  on(2, '09:25', () => job.call('Halvard asked where they are. Told him: still out, we are on to them.')),
]

/** Two went out, one came back. */
export const angledPairPartlyBack: Story = (job) => [
  on(14, '09:50', () =>
    job.book(
      {
        customer: customer('Maren Thistlewood', '555-0162'),
        engine: unknownV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', ['angle-cut'], ['flow-before', 'flow-after']),
        targetCc: '54.5',
        prices: [price('Angle and flat cut, pair', '520.00')],
        promiseOn: job.clock.day(13),
      },
      ['left', 'right'].map((side) => ({ castingId: job.ground.castings.closed, side, rackPlace: 'Rack 4' })),
    ),
  ),
  on(13, '08:30', async () => {
    await job.driveTo(0, 'angle-cut')
    await job.driveTo(1, 'angle-cut')
  }),
  on(11, '10:40', () => job.plan({ kind: 'angle-flat' }, { by: 'Maren Thistlewood', how: 'by telephone' })),
  on(10, '14:20', () =>
    job.send({
      heads: [0, 1],
      vendorId: job.ground.vendors.angle,
      scope: ['angle-cut'],
      promisedOn: job.clock.day(1),
    }),
  ),
  on(1, '10:15', async () => {
    await job.receive([0], ['angle-cut'], { typed: '30 ex side', read: '30 thou at the exhaust edge' })
    await job.tick(0, 'arrival-count')
  }),
]

/** Inserts and guides at the welder's, in good time. */
export const insertsOut: Story = (job) => [
  on(8, '15:10', () =>
    job.book(
      {
        customer: customer('Osric Vane', '555-0199'),
        engine: unknownV,
        preset: 'seat-or-guide',
        ordered: ordered('seat-or-guide', ['inserts']),
        prices: [price('Exhaust inserts', '38.00', '4'), price('Guides', '22.00', '8')],
        promiseOn: job.clock.day(9),
      },
      [{ castingId: job.ground.castings.old, stamp: 'OV', side: 'left' }],
    ),
  ),
  on(7, '09:00', () => job.driveTo(0, 'pressure')),
  on(5, '13:30', () =>
    job.send(
      {
        heads: [0],
        vendorId: job.ground.vendors.welding,
        scope: ['guides', 'inserts'],
        promisedOn: job.clock.day(3),
      },
      { instructions: 'Exhaust inserts all four, guides all eight.' },
    ),
  ),
  on(3, '10:20', () =>
    job.receive(
      [0],
      [],
      { typed: '', read: '' },
      {
        rejectedWhy: 'The insert of chamber 3 stands proud of its bore.',
        redoCost: 'vendor',
      },
    ),
  ),
  on(3, '14:10', () =>
    job.send(
      {
        heads: [0],
        vendorId: job.ground.vendors.welding,
        scope: ['guides', 'inserts'],
        promisedOn: job.clock.day(3),
      },
      { instructions: 'Set the insert of chamber 3 again; look over the rest.', redoCost: 'vendor' },
    ),
  ),
  on(2, '09:40', () => job.accept(job.clock.day(4), 'They fetch it themselves and are sorry.')),
]
