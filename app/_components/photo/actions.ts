'use server'
import { withdrawPhotoSchema } from '@/lib/schemas/photo'
import { withdrawPhoto } from '@/lib/use-cases/photos/withdraw-photo'
import { defineAction } from '@/lib/web/define-action'

export const withdrawPhotoAction = defineAction('withdrawPhoto', withdrawPhotoSchema, withdrawPhoto)
