import type { AuthOptions, User } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import { forPages, type SignedIn } from '@/lib/server/for-pages.ts'

/** Set by our own server ahead of Next, whatever the client sent. */
const ADDRESS = 'x-fettleyard-address'

const addressIn = (headers: Record<string, unknown> | undefined): string =>
  String(headers?.[ADDRESS])

const userOf = (signedIn: SignedIn | null): User | null =>
  signedIn === null
    ? null
    : {
        id: signedIn.person,
        name: signedIn.name,
        proof: signedIn.proof,
        provedAt: signedIn.provedAt,
      }

/** Three ways in, by `signIn('password' | 'link' | 'demo', …)`; a session is a signed cookie that names the person. */
export function authOptions(): AuthOptions {
  const { auth } = forPages()
  return {
    secret: auth.secret,
    useSecureCookies: auth.secure,
    session: { strategy: 'jwt', maxAge: auth.maxAgeSeconds },
    pages: { signIn: '/sign-in', error: '/sign-in' },
    providers: [
      CredentialsProvider({
        id: 'password',
        credentials: { email: {}, password: {} },
        authorize: async (given, request) =>
          userOf(
            await auth.byPassword(
              given?.email ?? '',
              given?.password ?? '',
              addressIn(request.headers),
            ),
          ),
      }),
      CredentialsProvider({
        id: 'link',
        credentials: { token: {} },
        authorize: async (given, request) =>
          userOf(await auth.byLink(given?.token ?? '', addressIn(request.headers))),
      }),
      CredentialsProvider({
        id: 'demo',
        credentials: { person: {} },
        authorize: async (given) => userOf(await auth.asDemo(given?.person ?? '')),
      }),
    ],
    callbacks: {
      jwt({ token, user }) {
        // Only at sign-in is there a user; later the token is only made anew, and must not look younger than it is.
        if (!user) return token
        const { proof, provedAt } = user
        return { sub: user.id, issuedAt: new Date().toISOString(), proof, provedAt }
      },
      session: ({ session, token }) => ({
        expires: session.expires,
        person: token.sub ?? '',
        provedAt: token.provedAt,
      }),
      // Resolved as a browser does: `//elsewhere` begins with a slash, too.
      redirect: ({ url, baseUrl }) =>
        URL.parse(url, baseUrl)?.origin === new URL(baseUrl).origin ? url : baseUrl,
    },
  }
}
