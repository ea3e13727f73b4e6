/** What the answer to the address of a page is made of. */
export interface PageSources {
  readonly network: () => Promise<Response>
  /** The page that shows what this phone kept, whatever the address. */
  readonly shell: () => Promise<Response | undefined>
  /** Whether this phone keeps what the address is about. */
  readonly kept: () => Promise<boolean>
  /** Resolves when the network has had its time. */
  readonly patience: () => Promise<void>
  /** Told where the network took longer than that. */
  readonly late: () => void
}

/** Said by a proxy in front of a server that is gone, or by ours while it starts. */
const NOBODY_HOME: readonly number[] = [502, 503, 504]

/**
 * The network's answer, if there is one; else the shell. With one bar of signal a request can hang for minutes: where the phone keeps
 * what was asked for, the network gets no longer than `patience`.
 */
export async function answerPage(from: PageSources): Promise<Response> {
  const asked = from.network().catch(() => null)
  const first = await Promise.race([asked, from.patience().then(() => 'late' as const)])
  if (first === 'late') {
    from.late()
    const shell = (await from.kept()) ? await from.shell() : undefined
    if (shell !== undefined) return shell
  }
  const answer = await asked
  if (answer !== null && !NOBODY_HOME.includes(answer.status)) return answer
  return (await from.shell()) ?? answer ?? Response.error()
}

/**
 * The network's answer to a screen's data, which Next asks for where a link is pressed. Where it fails, or hangs though the phone
 * keeps what was asked for, there is none, and Next goes to the address as a page instead, which the shell answers.
 */
export async function answerScreenData(from: Omit<PageSources, 'shell'>): Promise<Response> {
  return answerPage({ ...from, shell: async () => Response.error() })
}
