import { PartScreen } from './part-screen.tsx'

export default async function PartPage({
  params,
}: {
  readonly params: Promise<{ readonly part: string }>
}) {
  const { part } = await params
  return <PartScreen id={part} />
}
