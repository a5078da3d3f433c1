import type { AddPhotoForm } from '@/lib/schemas/photo'
import type { Answer } from '../form/call-action'
import { sendFile } from '../form/send-file'

export type PhotoWords = Omit<AddPhotoForm, 'sha256'>

/** Sends one photo and tells how far it is, from 0 to 1. */
export const sendPhoto = (
  op: string,
  words: PhotoWords,
  picture: Blob,
  onProgress: (part: number) => void,
): Promise<Answer<{ readonly photoId: string }>> =>
  sendFile({ address: '/api/photos', op, words, file: picture, what: 'The photo', onProgress })
