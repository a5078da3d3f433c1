import type { Page } from '@playwright/test'
import { checkIn } from './answers'
import { bookJob, doStep, signIn } from './person'

/** Books a head to be cut to 60 cc, checks it in and washes it; the machinist is at the page. Gives back its tag. */
export async function washedHead(page: Page, customer: string, phone: string): Promise<string> {
  await signIn(page, 'tamsin')
  const { tag } = await bookJob(page, {
    customer,
    phone,
    casting: 'Harrow wedge 64',
    target: '60',
    preset: 'Cut to size',
  })
  await signIn(page, 'dov')
  await doStep(page, tag, 'Check in', checkIn)
  await doStep(page, tag, 'Strip and wash')
  return tag
}
