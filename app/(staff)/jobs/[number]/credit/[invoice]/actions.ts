'use server'
import { writeCreditNoteSchema } from '@/lib/schemas/money-papers'
import { writeCreditNote } from '@/lib/use-cases/money/write-credit-note'
import { defineAction } from '@/lib/web/define-action'

export const writeCreditNoteAction = defineAction('writeCreditNote', writeCreditNoteSchema, writeCreditNote)
