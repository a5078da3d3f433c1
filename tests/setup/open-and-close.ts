import { closeClient, openClient } from '@/lib/data/client'

const [url = ''] = process.argv.slice(2)
await openClient(url)
await closeClient(url)
