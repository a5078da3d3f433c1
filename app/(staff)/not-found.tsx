import type { Metadata } from 'next'
import { NothingHere } from '../_components/shell/nothing-here'

export const metadata: Metadata = { title: 'Page not found' }

export default NothingHere
