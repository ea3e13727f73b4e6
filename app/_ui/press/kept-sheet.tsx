import Link from 'next/link'
import { Notice } from '@/app/_ui/paper.tsx'
import { KEPT_WORDS } from './kept-words.ts'

/** In place of a form whose press is safe on this phone: it would be pressed twice if it stood there still. */
export const KeptSheet = ({ href, label }: { readonly href: string; readonly label: string }) => (
  <div className="sheet stack">
    <Notice mark="unsent">
      <p role="status">{KEPT_WORDS.text}</p>
    </Notice>
    <p>
      <Link className="row-link" prefetch={false} href={href}>
        {label}
      </Link>
    </p>
  </div>
)
