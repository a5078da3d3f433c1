'use server'
import { answerByLinkSchema } from '@/lib/schemas/answer-by-link'
import { answerFindingByLink } from '@/lib/use-cases/findings/answer-finding-by-link'
import { defineLinkAction } from '@/lib/web/define-link-action'

export const answerByLinkAction = defineLinkAction('answerByLink', answerByLinkSchema, answerFindingByLink)
