'use server'
import { removeLogoSchema } from '@/lib/schemas/logo'
import { changeShopSchema } from '@/lib/schemas/shop'
import { changeShop } from '@/lib/use-cases/shop/change-shop'
import { removeLogo } from '@/lib/use-cases/shop/remove-logo'
import { defineAction } from '@/lib/web/define-action'

export const changeShopAction = defineAction('changeShop', changeShopSchema, changeShop, () => '/back-room')
export const removeLogoAction = defineAction('removeLogo', removeLogoSchema, removeLogo)
