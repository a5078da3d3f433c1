'use server'
import { bookJobSchema } from '@/lib/schemas/job'
import { bookJob } from '@/lib/use-cases/jobs/book-job'
import { defineAction } from '@/lib/web/define-action'

export const bookJobAction = defineAction(
  'bookJob',
  bookJobSchema,
  bookJob,
  ({ number, notPlanned }) => `/jobs/${number}?booked=${notPlanned === '' ? '1' : 'unplanned'}`,
)
