/** The page's content policy lets a style in by its nonce only; the library looks for it in this tag. */
export function showNonce(): void {
  if (document.querySelector('meta[property="csp-nonce"]') !== null) return
  const nonce = document.querySelector<HTMLScriptElement>('script[nonce]')?.nonce
  if (nonce === undefined || nonce === '') return
  const tag = document.createElement('meta')
  tag.setAttribute('property', 'csp-nonce')
  tag.nonce = nonce
  document.head.append(tag)
}
