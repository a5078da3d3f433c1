import type { ActionForm } from '@/app/_components/form/use-action-form'
import type { BookJobForm } from '@/lib/schemas/job'
import type { BookedJob } from '@/lib/use-cases/jobs/book-job'

export type BookingActionForm = ActionForm<BookJobForm, BookedJob>
