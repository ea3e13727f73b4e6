import type { Proof } from '@/lib/record/actor.ts'

declare module 'next-auth' {
  interface User {
    proof: Proof
    provedAt: string
  }
  interface Session {
    person: string
    provedAt: string
  }
}

declare module 'next-auth/jwt' {
  interface JWT {
    issuedAt: string
    proof: Proof
    provedAt: string
  }
}
