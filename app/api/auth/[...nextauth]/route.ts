import type { NextRequest } from 'next/server'
import NextAuth from 'next-auth'
import { authOptions } from '../auth-options.ts'

interface Place {
  readonly params: Promise<{ nextauth: string[] }>
}

/** Sign-in and sign-out. Which provider lets whom in is the running server's business. */
const answer = (request: NextRequest, place: Place): Promise<Response> =>
  NextAuth(request, place, authOptions())

export { answer as GET, answer as POST }
