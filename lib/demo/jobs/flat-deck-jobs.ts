import { emptyWanted } from '@/lib/schemas/wanted'
import { bowlFour, camInHeadFour, customer, ordered, price } from './bookings'
import { on, type Story } from './story'

/** A flat-deck head on its way: read, planned to a thickness, cut; its valves are checked next. */
export const flatDeckCut: Story = (job) => [
  on(7, '09:20', () =>
    job.book(
      {
        customer: customer('Fenwick Aldergate', '555-0144'),
        engine: bowlFour,
        preset: 'cut-to-size',
        ordered: [{ work: 'flat-cut', note: '' }],
        wanted: { ...emptyWanted(), finishedThicknessIn: '4.1200' },
        finishAsked: '60 µin or better, steel gasket',
        prices: [price('Flat cut to a thickness', '145.00'), price('Pressure check', '60.00')],
        promiseOn: job.clock.day(5),
        note: 'Gasket failed between two and three. Injectors stay with the customer’s mechanic until the cut is done.',
      },
      [
        {
          castingId: job.ground.castings.flatDeck,
          stamp: 'FA 1',
          side: 'the only head',
          rackPlace: 'Rack 3 floor',
        },
      ],
    ),
  ),
  on(6, '10:10', () => job.driveTo(0, 'flat-cut')),
  on(4, '13:30', () => job.plan({ kind: 'flat' }, { by: 'Fenwick Aldergate', how: 'by telephone' })),
  on(1, '10:40', () => job.driveThrough(0, 'deburr')),
]

/** Four valves a chamber: the cut leaves room for what seat work at all sixteen valves will add. */
export const fourValveSeats: Story = (job) => [
  on(5, '14:10', () =>
    job.book(
      {
        customer: customer('Isolde Quennell', '555-0162'),
        engine: { ...camInHeadFour, label: '2.0 four, two cams' },
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', ['seat-work'], ['flow-before', 'flow-after']),
        targetCc: '42.0',
        prices: [price('Cut to size', '140.00'), price('Seats, 16 valves', '18.00', '16')],
        promiseOn: job.clock.day(9),
      },
      [{ castingId: job.ground.castings.fourValve, side: 'the only head', rackPlace: 'Rack 2 lower' }],
    ),
  ),
  on(3, '09:00', () => job.driveTo(0, 'flat-cut')),
  on(2, '11:15', () => job.plan({ kind: 'flat', sinkIn: '.006' }, { by: 'Isolde Quennell', how: 'at the counter' })),
]

/** A clean-up after which the chamber read hardly smaller: what that teaches the rate is asked about. */
export const cleanUpAsked: Story = (job) => [
  on(13, '15:00', () =>
    job.book(
      {
        customer: customer('Marlow Teasdale', '555-0157'),
        engine: camInHeadFour,
        preset: 'refresh',
        ordered: [{ work: 'flat-cut', note: 'only what it needs' }],
        prices: [price('Clean-up cut', '95.00')],
        promiseOn: job.clock.day(5),
      },
      [{ castingId: job.ground.castings.inlineFour, side: 'the only head', rackPlace: 'Rack 1 upper' }],
    ),
  ),
  on(12, '08:30', () => job.driveTo(0, 'flat-cut', { chambers: { cc: { '1': '48.4' } } })),
  on(11, '09:20', () =>
    job.plan({ kind: 'clean-up', stopAtIn: '.030' }, { by: 'Marlow Teasdale', how: 'by telephone' }),
  ),
  on(10, '13:00', () => job.driveTo(0, 'finished')),
  on(10, '15:30', () => job.tick(0, 'finished', { cc: { '1': '48.3' } })),
]
