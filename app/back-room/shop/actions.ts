'use server'
import { changeShopSchema } from '@/lib/schemas/shop'
import { changeShop } from '@/lib/use-cases/shop/change-shop'
import { defineAction } from '@/lib/web/define-action'

export const changeShopAction = defineAction('changeShop', changeShopSchema, changeShop)
