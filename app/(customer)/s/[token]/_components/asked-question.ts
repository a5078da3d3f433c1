import type { LinkView } from '@/lib/use-cases/links/see-by-link'

export type AskedQuestion = LinkView['questions'][number]
