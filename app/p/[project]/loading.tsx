import { Loading } from '@/app/_ui/loading.tsx'

export default function ScreenLoading() {
  return <Loading what="the screen" />
}
