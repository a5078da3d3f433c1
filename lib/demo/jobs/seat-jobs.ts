import { refreshWanted } from '../wanted'
import { customer, ordered, price, streetV } from './bookings'
import { on, type Story } from './story'

/** Guide clearance as read at each valve, in inches. */
const guideClearance: Readonly<Record<string, string>> = {
  '1-intake': '.0015',
  '1-exhaust': '.0020',
  '2-intake': '.0016',
  '2-exhaust': '.0021',
  '3-intake': '.0015',
  '3-exhaust': '.0019',
  '4-intake': '.0017',
  '4-exhaust': '.0022',
}

/** Cut, guides, seats and springs on one head, released: its sheet has every valve, wanted beside measured. */
export const seatsReleased: Story = (job) => [
  on(9, '10:20', () =>
    job.book(
      {
        customer: customer('Odile Carrow', '555-0168'),
        engine: streetV,
        preset: 'cut-to-size',
        ordered: ordered('cut-to-size', ['guides', 'seat-work', 'heights', 'springs'], ['flow-before', 'flow-after']),
        targetCc: '62.0',
        wanted: refreshWanted,
        prices: [
          price('Cut to size, one head', '130.00'),
          price('Guides, eight', '14.00', '8'),
          price('Seats, eight valves', '18.00', '8'),
        ],
        promiseOn: job.clock.day(1),
      },
      [{ castingId: job.ground.castings.wedge, stamp: 'OC', side: 'left', rackPlace: 'Rack 1 lower' }],
    ),
  ),
  on(8, '08:20', () => job.driveTo(0, 'flat-cut', { guides: { 'guide-clearance': guideClearance } })),
  on(7, '09:15', () => job.plan({ kind: 'flat', sinkIn: '.004' }, { by: 'Odile Carrow', how: 'by telephone' })),
  on(6, '08:25', () => job.driveThrough(0, 'deburr')),
  on(5, '08:30', () => job.driveTo(0, 'heights')),
  on(4, '08:40', () => job.driveThrough(0, 'final')),
  on(3, '16:10', () => job.release(0)),
]
