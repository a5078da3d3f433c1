'use server'
import {
  blankCustomerSchema,
  changeCustomerSchema,
  importSchema,
  mergeCustomersSchema,
  undoMergeSchema,
} from '@/lib/schemas/customer'
import { blankCustomer } from '@/lib/use-cases/customers/blank-customer'
import { changeCustomer } from '@/lib/use-cases/customers/change-customer'
import { importCustomers } from '@/lib/use-cases/customers/import-customers'
import { mergeCustomers } from '@/lib/use-cases/customers/merge-customers'
import { previewImport } from '@/lib/use-cases/customers/preview-import'
import { undoMerge } from '@/lib/use-cases/customers/undo-merge'
import { defineAction } from '@/lib/web/define-action'

const pageOf = ({ customerId }: { customerId: string }) => `/customers/${customerId}`

export const changeCustomerAction = defineAction('changeCustomer', changeCustomerSchema, changeCustomer, pageOf)
export const mergeCustomersAction = defineAction(
  'mergeCustomers',
  mergeCustomersSchema,
  mergeCustomers,
  ({ intoId }) => `/customers/${intoId}`,
)
export const undoMergeAction = defineAction('undoMerge', undoMergeSchema, undoMerge, pageOf)
export const blankCustomerAction = defineAction('blankCustomer', blankCustomerSchema, blankCustomer, pageOf)
export const importCustomersAction = defineAction('importCustomers', importSchema, importCustomers)
/** Changes nothing: it is sent as a deed because a list is too long for an address. */
export const previewImportAction = defineAction('previewImport', importSchema, previewImport)
