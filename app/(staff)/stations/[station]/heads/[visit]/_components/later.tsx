'use client'
import dynamic from 'next/dynamic'

/** Parts that few pages show: those that do fetch them. Only a part that runs in the browser can put them off. */
export const CornerInsetForm = dynamic(() => import('./corner-inset-form').then((file) => file.CornerInsetForm))
export const LeftDraft = dynamic(() => import('./left-draft').then((file) => file.LeftDraft))
