import { PersonId } from '../../record/ids.ts'

const KEY = 'fettleyard.person'

/** Whose views this phone may show without a network; null after a sign-out, or where the browser keeps nothing. */
export function phonePerson(): PersonId | null {
  try {
    const read = PersonId.safeParse(localStorage.getItem(KEY))
    return read.success ? read.data : null
  } catch {
    return null
  }
}

/** The server has just shown something to that person: what this phone keeps is theirs. */
export function phoneIsOf(person: PersonId): void {
  try {
    localStorage.setItem(KEY, person)
  } catch {
    // A window that keeps nothing opens nothing without a network either.
  }
}

/** Somebody signed out, or signs in: until the server has shown a page to them, the phone shows nothing that it keeps. */
export function phoneIsNobodys(): void {
  try {
    localStorage.removeItem(KEY)
  } catch {
    // As above.
  }
}
