'use client'
import type { ReactNode } from 'react'
import { LiveLine } from '@/app/_ui/live-line.tsx'
import { Plate } from '@/app/_ui/paper.tsx'
import { projectPath, shopPath } from '@/app/_ui/paths.ts'
import { type Place, Rail } from '@/app/_ui/rail.tsx'
import { WhoWorks } from '@/app/_ui/shop-phone/who-works.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import { useOnShopPhone } from '@/lib/live/shop-phone/use-shop-phone.ts'
import { partyName, personName, standing } from '@/lib/words/names.ts'

/** Plate, rail and live line around every screen of a project. */
export function ProjectShell({ children }: { readonly children: ReactNode }) {
  const { record, reader } = useProject()
  const project = record.projects.rows.get(record.id)
  const party = record.parties.rows.get(reader.view.party)
  const role = standing(record, reader)
  const person = personName(reader.person, reader.people)
  const name = partyName(reader.view.party, record)
  const onPhone = useOnShopPhone(reader.person)
  return (
    <>
      <header>
        <a className="skip" href="#content">
          To the content
        </a>
      </header>
      <Rail places={placesFor(record.id, party?.shop ?? null, reader.view.role)} />
      <main className="page stack" id="content">
        <Plate title={project?.name ?? 'A car'} under={underPlate(project)}>
          {onPhone ? (
            <WhoWorks />
          ) : (
            <>
              <b>{name}</b>
              {role === '' ? '' : `, ${role}`}
              {person === name ? '' : ` · ${person}`}
            </>
          )}
        </Plate>
        <LiveLine place={reader} />
        {children}
      </main>
    </>
  )
}

const underPlate = (
  project: { readonly year: number | null; readonly description: string } | undefined,
): string =>
  [project?.year ?? '', project?.description ?? ''].filter((part) => part !== '').join(' · ')

function placesFor(project: string, shop: string | null, role: string): readonly Place[] {
  const buildOrder = {
    href: projectPath(project, 'build-order'),
    label: 'Build order',
    under: [projectPath(project, 'stages')],
  }
  const journal = { href: projectPath(project, 'journal'), label: 'Journal' }
  if (role === 'owner') {
    return [
      { href: projectPath(project), label: 'My car' },
      {
        href: projectPath(project, 'change-orders'),
        label: 'My yes',
        under: [projectPath(project, 'decisions')],
      },
      buildOrder,
      journal,
    ]
  }
  return [
    ...(shop === null ? [] : [{ href: shopPath(shop), label: 'Day sheet' }]),
    { href: projectPath(project), label: 'Project' },
    buildOrder,
    { href: projectPath(project, 'handovers'), label: 'Handovers' },
    journal,
  ]
}
