'use server'
import { addInstrumentSchema, changeInstrumentSchema } from '@/lib/schemas/shop'
import { addInstrument } from '@/lib/use-cases/shop/add-instrument'
import { changeInstrument } from '@/lib/use-cases/shop/change-instrument'
import { defineAction } from '@/lib/web/define-action'

const list = () => '/back-room/instruments'

export const addInstrumentAction = defineAction('addInstrument', addInstrumentSchema, addInstrument, list)
export const changeInstrumentAction = defineAction('changeInstrument', changeInstrumentSchema, changeInstrument, list)
