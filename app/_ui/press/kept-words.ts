import type { ToastWords } from '@/app/_ui/toast-face.tsx'

/** What is said of a press that the server has not heard of: never that it is done. */
export const KEPT_WORDS: ToastWords = {
  mark: 'unsent',
  text: 'Kept on this phone. It goes when there is signal.',
}
