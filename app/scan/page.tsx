import { Screen } from '@/app/_screen/screen.tsx'
import { screenMetadata } from '@/app/_screen/screen-page.tsx'

export const metadata = screenMetadata('/scan')

/** The same for everybody, with a network or without. */
export default function Scan() {
  return <Screen path="/scan" asked={{ params: {}, search: {}, source: null }} />
}
