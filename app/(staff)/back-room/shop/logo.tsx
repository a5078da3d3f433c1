'use client'
import type { Chosen } from '@/app/_components/form/use-uploads'
import { Button } from '@/app/_components/ui/button'
import { Busy } from '@/app/_components/ui/busy'
import { FileButton } from '@/app/_components/ui/file-button'
import { Notice } from '@/app/_components/ui/notice'
import { LogoSample, type ShopWords } from './logo-sample'
import styles from './logo.module.css'
import { useLogo } from './use-logo'

export type KeptLogo = { readonly sha256: string; readonly widthPx: number; readonly heightPx: number }
type Props = { logo: KeptLogo | null; shop: ShopWords; by: string }

/** The picture at the head of the papers: what stands there now, another one to look at first, none. */
export function Logo({ logo, shop, by }: Props) {
  const choice = useLogo(logo?.sha256 ?? '')
  const { chosen, pending, problem, said } = choice
  return (
    <section className="stack part" aria-label="Logo" data-hands-on={chosen ? '' : undefined}>
      <h2>Logo</h2>
      <p>
        Printed beside the shop’s name on outside sheets, spec sheets, estimates and receipts, and shown on the
        customer’s page. Released sheets keep the logo they were released with.
      </p>
      {logo ? <Now logo={logo} shop={shop} by={by} /> : <p>No logo: papers show the name only.</p>}
      {chosen && <Candidate chosen={chosen} shop={shop} />}
      {problem !== '' && (
        <Notice kind="stop" title="Not saved">
          <p>{problem}</p>
        </Notice>
      )}
      <div className="row">
        {chosen && (
          <Button variant="main" pending={pending} pendingLabel="Sending…" onClick={() => void choice.use()}>
            Use this picture
          </Button>
        )}
        <FileButton
          label={chosen ? 'Choose another picture' : logo ? 'Replace the logo' : 'Choose a picture'}
          accept="image/png,image/jpeg,image/webp"
          onPick={choice.choose}
        />
        {chosen && (
          <Button variant="quiet" disabled={pending} onClick={choice.drop}>
            {logo ? 'Keep the old logo' : 'Cancel'}
          </Button>
        )}
        {logo && !chosen && (
          <Button variant="quiet" pending={pending} onClick={choice.remove}>
            Remove the logo
          </Button>
        )}
      </div>
      <p className="soft">
        PNG, JPEG or WebP, at most 4 MB. Dark on light prints best; 300 pixels of height print sharply. Transparent
        areas stay white.
      </p>
      <Busy when={pending} label="Sending…" />
      <p role="status">{said}</p>
    </section>
  )
}

function Now({ logo, shop, by }: { logo: KeptLogo; shop: ShopWords; by: string }) {
  const picture = { ...logo, src: `/api/logo/${logo.sha256}` }
  return (
    <>
      <div className={styles.samples}>
        <LogoSample logo={picture} shop={shop} caption="As it prints" />
        <LogoSample logo={picture} shop={shop} caption="On a black-and-white printer" grey />
      </div>
      {by !== '' && <p className="soft">Chosen by {by}.</p>}
    </>
  )
}

function Candidate({ chosen, shop }: { chosen: Chosen; shop: ShopWords }) {
  if (!chosen.size) return <p>This browser cannot show the picture. It can still be used.</p>
  return (
    <div className={styles.samples}>
      <LogoSample logo={{ src: chosen.preview, ...chosen.size }} shop={shop} caption="Chosen, not in use yet" />
    </div>
  )
}
