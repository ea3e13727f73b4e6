import type { Assembly } from '@/lib/record/entities/things.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'

/** The assembly that most others are fitted to: the shell. Undefined in a project without assemblies. */
export function mainAssembly(record: ProjectRecord): Assembly | undefined {
  const hosting = new Map<string, number>()
  const count = (host: string | null) => {
    if (host !== null) hosting.set(host, (hosting.get(host) ?? 0) + 1)
  }
  for (const { host } of record.assemblies.rows.values()) count(host)
  for (const { host } of record.stages.rows.values()) count(host)
  const [most] = [...hosting].toSorted(([, a], [, b]) => b - a)
  const first = [...record.assemblies.rows.values()][0]
  return most === undefined ? first : record.assemblies.rows.get(most[0])
}
