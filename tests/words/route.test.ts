import { expect, it } from 'vitest'
import type { Reason, Wait, Why } from '@/lib/core/route/codes'
import { reasonText, waitText, whyText } from '@/lib/words/route'

const order = { vendor: 'Northgate Grinding', number: 'O-0004' }

it.each<[Why | null, string]>([
  [null, ''],
  [{ code: 'used-head' }, 'used head'],
  [{ code: 'sent-out', order }, 'sent out to Northgate Grinding, order O-0004'],
  [{ code: 'after-work', steps: ['seat-work', 'port'] }, 'after seat work and port work'],
  [
    { code: 'past-limit', what: 'metal-removed', valueIn: 0.064, limitIn: 0.06 },
    'removed since new: 0.064 in, over the shop’s limit of 0.060 in',
  ],
  [{ code: 'own', condition: 'cut-deeper', limitIn: 0.03 }, 'more is cut on this visit than 0.030 in'],
])('why %o: %s', (why, text) => {
  expect(whyText(why)).toBe(text)
})

it.each<[Reason | null, string]>([
  [null, ''],
  [{ code: 'undone', cause: 'deck-cut' }, 'the deck was cut after it'],
  [{ code: 'angle-short', shortIn: 0.013 }, 'the angle part is 0.013 in short by the corners'],
  [{ code: 'plan-now', kind: 'flat' }, 'not needed: the plan is now flat cut'],
])('reason %o: %s', (reason, text) => {
  expect(reasonText(reason)).toBe(text)
})

it.each<[Wait, string]>([
  [{ code: 'step', step: { stepId: 'flat-cut', occurrence: '', orderId: null }, label: 'Big cut' }, 'Big cut'],
  [{ code: 'send-out', order }, 'sending out to Northgate Grinding, order O-0004'],
  [{ code: 'release' }, 'release'],
])('wait %o: %s', (wait, text) => {
  expect(waitText(wait)).toBe(text)
})
