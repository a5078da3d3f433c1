'use client'
import { useState } from 'react'
import { useAction } from '@/app/_components/form/use-action'
import { useUploads, type Size } from '@/app/_components/form/use-uploads'
import { removeLogoAction } from './actions'

/** A picture that is looked at before it becomes the shop's logo. `seen` is the logo that the page shows; '' for none. */
export function useLogo(seen: string) {
  const uploads = useUploads({
    address: '/api/logo',
    what: 'The picture',
    single: true,
    prepare: async (file) => ({ file, size: await sizeOf(file) }),
  })
  const removal = useAction()
  const [said, setSaid] = useState('')
  const [one] = uploads.chosen

  async function choose(files: FileList | null) {
    removal.clear()
    await uploads.choose(files)
    setSaid('Picture chosen, not in use yet.')
  }

  function drop() {
    if (one) uploads.drop(one.key)
    setSaid('')
  }

  async function use() {
    setSaid('')
    if ((await uploads.send(() => ({ seen }))) === 0) setSaid('Saved. Papers show this logo from now on.')
  }

  function remove() {
    setSaid('')
    const onDone = () => setSaid('Logo removed. Papers show the name only.')
    removal.run({ action: removeLogoAction, input: { seen }, onDone })
  }

  const chosen = one && !one.unusable ? one : null
  const problem = removal.refusal?.message ?? one?.problem ?? ''
  return { chosen, pending: uploads.pending || removal.pending, problem, said, choose, drop, use, remove }
}

async function sizeOf(file: Blob): Promise<Size | null> {
  try {
    const picture = await createImageBitmap(file)
    const { width, height } = picture
    picture.close()
    return { widthPx: width, heightPx: height }
  } catch {
    return null
  }
}
