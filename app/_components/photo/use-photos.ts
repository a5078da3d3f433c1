'use client'
import type { AddPhotoForm } from '@/lib/schemas/photo'
import { useUploads, type Uploads } from '../form/use-uploads'
import { shrink } from './shrink'

/** Where a photo belongs. */
export type PhotoPlace = Omit<AddPhotoForm, 'sha256' | 'caption'>

export type Photos = Omit<Uploads, 'send'> & { readonly send: (to: PhotoPlace) => Promise<number> }

/** Photos in a form: taken, captioned, sent once each. */
export function usePhotos(): Photos {
  const { send, ...uploads } = useUploads({
    address: '/api/photos',
    what: 'The photo',
    prepare: async (file) => ({ file: await shrink(file), size: null }),
  })
  return { ...uploads, send: (to) => send((one) => ({ ...to, caption: one.caption.trim() })) }
}
