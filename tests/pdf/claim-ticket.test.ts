import { expect, it } from 'vitest'
import { claimTicket } from '@/lib/pdf/claim-ticket'
import { readPdf } from './read-pdf'
import { decoded, greyPages } from './rendered'
import { claimTicketOf } from './sample-desk-papers'
import { setting } from './sample-papers'

it.each([1, 37, 40])('the code of a ticket for %i heads reads, and the account stands beside it', async (count) => {
  const heads = Array.from({ length: count }, (_, at) => ({
    ...{ tag: `T-${9000 + at}`, casting: 'Halden 4', side: 'left bank', cameWith: '' },
  }))
  const bytes = await claimTicket({ ...claimTicketOf, jobNumber: '26-0117', heads }, setting)
  const { pages } = await readPdf(bytes)
  const last = (await greyPages(bytes, 150)).at(-1)
  expect(last && decoded(last)).toBe('26-0117')
  expect(pages.at(-1)).toMatch(/Bring this ticket/)
  expect(pages.at(-1)).toMatch(/Total with tax/)
})
