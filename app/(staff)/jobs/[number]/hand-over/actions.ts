'use server'
import { handOverSchema } from '@/lib/schemas/release'
import { handOver } from '@/lib/use-cases/hand-over/hand-over'
import { defineAction } from '@/lib/web/define-action'

export const handOverAction = defineAction('handOver', handOverSchema, handOver)
