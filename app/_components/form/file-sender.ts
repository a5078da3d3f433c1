'use client'
import { createContext } from 'react'
import { sendFile } from './send-file'

export type FileSender = {
  readonly send: typeof sendFile
  /** The page does not show by itself what was sent. */
  readonly refreshes: boolean
}

/** How a file goes up: at once, or where a part of the app says so, kept on the device first. */
export const FileSenderContext = createContext<FileSender>({ send: sendFile, refreshes: true })
