'use server'
import { bookJobSchema } from '@/lib/schemas/job'
import { bookJob } from '@/lib/use-cases/jobs/book-job'
import { defineAction } from '@/lib/web/define-action'

export const bookJobAction = defineAction('bookJob', bookJobSchema, bookJob, (job) => `/jobs/${job.number}?booked=1`)
