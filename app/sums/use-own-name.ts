'use client'
import { useEffect, useState } from 'react'
import { keptFor } from '@/lib/live/phone/kept-views.ts'
import { openPhoneStore } from '@/lib/live/phone/phone-store.ts'
import { phonePerson } from '@/lib/live/phone/whose-phone.ts'

/** The name of whoever's phone this is, from what it keeps; empty where it keeps nothing of theirs. */
export function useOwnName(): string {
  const [name, setName] = useState('')
  useEffect(() => {
    let stays = true
    void keptName()
      .catch(() => '')
      .then((found) => stays && setName(found))
    return () => {
      stays = false
    }
  }, [])
  return name
}

async function keptName(): Promise<string> {
  const person = phonePerson()
  if (person === null) return ''
  const phone = await openPhoneStore()
  try {
    const views = await keptFor(phone, person)
    return views.flatMap(({ view }) => view.people[person] ?? [])[0] ?? ''
  } finally {
    phone.close()
  }
}
