import * as z from 'zod/mini'
import type { ProjectView } from '@/lib/command/wire.ts'
import { Entity } from '@/lib/record/entity.ts'
import { PartyId, PersonId, ProjectId } from '@/lib/record/ids.ts'
import { Instant } from '@/lib/record/scalars.ts'
import { leaves } from './sample-leaves.ts'
import { work } from './sample-work.ts'

/** When it is on this page: it never moves, so that its pictures don't. */
const NOW = Instant.parse('2027-02-11T09:31:00.000Z')
const PROJECT = 'prj_sample'
const since = '2027-01-04T08:00:00.000Z'

const party = (id: string, name: string, more: object = {}) => ({
  kind: 'party',
  id,
  project: PROJECT,
  name,
  role: 'shop',
  lead: false,
  shop: null,
  bills: 'owner',
  leftAt: null,
  ...more,
})
const assembly = (id: string, name: string, custodian: string, pieces = 1) => ({
  kind: 'assembly',
  id,
  project: PROJECT,
  name,
  pieces,
  custodian,
  since,
  host: null,
  holdsFuel: false,
})

const entities = z.array(Entity).parse([
  {
    kind: 'project',
    id: PROJECT,
    name: 'Averley Three-Litre',
    year: 1961,
    description: 'Saloon, straight-six. Ivory over oxblood leather.',
    currency: 'GBP',
    timeZone: 'Europe/London',
    standingConsentEach: null,
    standingConsentTotal: null,
    demo: false,
    createdAt: since,
  },
  party('pty_lead', 'Tarn Lane Coachworks', { lead: true }),
  party('pty_engines', 'Bexwater Engines'),
  party('pty_owner', 'Ines Halloran', { role: 'owner' }),
  assembly('asm_engine', 'Engine', 'pty_engines'),
  assembly('asm_gearbox', 'Gearbox', 'pty_engines', 61),
  ...work,
  ...leaves,
])

const viewOf = (party: string, role: 'manager' | 'owner', person: string): ProjectView => ({
  record: ProjectId.parse(PROJECT),
  view: { party: PartyId.parse(party), role },
  person: PersonId.parse(person),
  version: 1,
  epoch: 1,
  now: NOW,
  entities,
  stubs: [],
  versions: {},
  people: {
    psn_mara: 'Mara Ellwood',
    psn_jory: 'Jory Wenlock',
    psn_wyn: 'Wyn Pardoe',
    psn_ines: 'Ines Halloran',
  },
  shops: [],
  bays: [],
  members: [],
})

/** The sample as the lead's manager sees it. */
export const asLead = viewOf('pty_lead', 'manager', 'psn_mara')
/** The sample as its owner sees it. */
export const asOwner = viewOf('pty_owner', 'owner', 'psn_ines')
