import { projectPath } from '@/app/_ui/paths.ts'

/** The stage from which the sums were opened, as it stands in their address. */
export interface ForStage {
  readonly project: string
  readonly stage: string
}

/** The stage that an address names; null where it names none. */
export const forStage = (search: {
  readonly [name: string]: string | undefined
}): ForStage | null => {
  const { project, stage } = search
  return project === undefined || stage === undefined ? null : { project, stage }
}

const asked = (stage: ForStage | null): string =>
  stage === null ? '' : `?${new URLSearchParams({ ...stage })}`

/** Address of the list of sums, and of one of them, kept to the stage that asked for them. */
export const sumsPath = (stage: ForStage | null, name?: string): string =>
  `/sums${name === undefined ? '' : `/${name}`}${asked(stage)}`

/** Address of the stage itself. */
export const stagePath = ({ project, stage }: ForStage): string =>
  projectPath(project, `stages/${stage}`)
