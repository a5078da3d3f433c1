'use server'
import { makeCustomerLinkSchema, revokeCustomerLinkSchema } from '@/lib/schemas/release'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { revokeCustomerLink } from '@/lib/use-cases/links/revoke-customer-link'
import { defineAction } from '@/lib/web/define-action'

export const makeCustomerLinkAction = defineAction('makeCustomerLink', makeCustomerLinkSchema, makeCustomerLink)
export const revokeCustomerLinkAction = defineAction('revokeCustomerLink', revokeCustomerLinkSchema, revokeCustomerLink)
