import { Loading } from '@/app/_ui/loading.tsx'

export default function ShopLoading() {
  return <Loading what="the screen" />
}
