import { phoneIsNobodys } from './whose-phone.ts'

/** At a sign-out: this phone shows nothing more without a network, and forgets what was seen. What is unsent stays for its person. */
export async function forgetThisPerson(): Promise<void> {
  phoneIsNobodys()
  try {
    const [{ openPhoneStore }, { forgetViews }] = await Promise.all([
      import('./phone-store.ts'),
      import('./kept-views.ts'),
    ])
    const phone = await openPhoneStore()
    await forgetViews(phone)
    phone.close()
  } catch {
    // A window that keeps nothing has nothing to forget.
  }
}
