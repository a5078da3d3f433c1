'use server'
import { addVendorSchema, changeVendorSchema, retireVendorSchema } from '@/lib/schemas/vendor'
import { addVendor } from '@/lib/use-cases/vendors/add-vendor'
import { changeVendor } from '@/lib/use-cases/vendors/change-vendor'
import { retireVendor } from '@/lib/use-cases/back-room/retire'
import { defineAction } from '@/lib/web/define-action'

const list = () => '/back-room/vendors'

export const addVendorAction = defineAction('addVendor', addVendorSchema, addVendor, list)
export const changeVendorAction = defineAction('changeVendor', changeVendorSchema, changeVendor, list)
export const retireVendorAction = defineAction('retireVendor', retireVendorSchema, retireVendor)
