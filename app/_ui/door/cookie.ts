import { headers } from 'next/headers'

/** The request's cookies, as the server's functions want them. */
export const cookieHeader = async (): Promise<string | null> => (await headers()).get('cookie')
