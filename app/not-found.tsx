import Link from 'next/link'
import { ErrorState } from '@/app/_ui/paper.tsx'

export default function NotFound() {
  return (
    <ErrorState title="There is no such page.">
      <p>The link may be cut short, or what it led to is gone.</p>
      <div className="row">
        <Link className="btn" href="/">
          My projects
        </Link>
      </div>
    </ErrorState>
  )
}
