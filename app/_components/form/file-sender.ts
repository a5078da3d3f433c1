'use client'
import { createContext } from 'react'
import { sendFile } from './send-file'

/** How a file goes up: at once, or where a part of the app says so, kept on the device first. */
export const FileSender = createContext(sendFile)
