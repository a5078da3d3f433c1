'use server'
import { addPriceItemSchema, changePriceItemSchema, retirePriceItemSchema } from '@/lib/schemas/price'
import { addPriceItem } from '@/lib/use-cases/prices/add-price-item'
import { changePriceItem } from '@/lib/use-cases/prices/change-price-item'
import { retirePriceItem } from '@/lib/use-cases/back-room/retire'
import { defineAction } from '@/lib/web/define-action'

const list = () => '/back-room/prices'

export const addPriceItemAction = defineAction('addPriceItem', addPriceItemSchema, addPriceItem, list)
export const changePriceItemAction = defineAction('changePriceItem', changePriceItemSchema, changePriceItem, list)
export const retirePriceItemAction = defineAction('retirePriceItem', retirePriceItemSchema, retirePriceItem)
