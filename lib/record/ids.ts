import * as z from 'zod/mini'

const id = (prefix: string) =>
  z
    .string()
    .check(z.regex(new RegExp(`^${prefix}_[0-9a-z]{1,48}$`), `an id that begins with ${prefix}_`))

export const ProjectId = id('prj').brand<'ProjectId'>()
export type ProjectId = z.infer<typeof ProjectId>
export const PartyId = id('pty').brand<'PartyId'>()
export type PartyId = z.infer<typeof PartyId>
export const ParticipantId = id('ptc').brand<'ParticipantId'>()
export type ParticipantId = z.infer<typeof ParticipantId>
export const AssemblyId = id('asm').brand<'AssemblyId'>()
export type AssemblyId = z.infer<typeof AssemblyId>
export const StageId = id('stg').brand<'StageId'>()
export type StageId = z.infer<typeof StageId>
export const LinkId = id('lnk').brand<'LinkId'>()
export type LinkId = z.infer<typeof LinkId>
export const CheckId = id('chk').brand<'CheckId'>()
export type CheckId = z.infer<typeof CheckId>
export const SignOffId = id('sgn').brand<'SignOffId'>()
export type SignOffId = z.infer<typeof SignOffId>
export const HoldId = id('hld').brand<'HoldId'>()
export type HoldId = z.infer<typeof HoldId>
export const HandoverId = id('hnd').brand<'HandoverId'>()
export type HandoverId = z.infer<typeof HandoverId>
export const ChangeOrderId = id('cho').brand<'ChangeOrderId'>()
export type ChangeOrderId = z.infer<typeof ChangeOrderId>
export const ChangeLineId = id('chl').brand<'ChangeLineId'>()
export type ChangeLineId = z.infer<typeof ChangeLineId>
export const EstimateLineId = id('esl').brand<'EstimateLineId'>()
export type EstimateLineId = z.infer<typeof EstimateLineId>
export const PartId = id('prt').brand<'PartId'>()
export type PartId = z.infer<typeof PartId>
export const PromiseId = id('prm').brand<'PromiseId'>()
export type PromiseId = z.infer<typeof PromiseId>
export const DecisionId = id('dcs').brand<'DecisionId'>()
export type DecisionId = z.infer<typeof DecisionId>
export const DecisionOptionId = id('opt').brand<'DecisionOptionId'>()
export type DecisionOptionId = z.infer<typeof DecisionOptionId>
export const OpenWindowId = id('win').brand<'OpenWindowId'>()
export type OpenWindowId = z.infer<typeof OpenWindowId>
export const SlotId = id('slt').brand<'SlotId'>()
export type SlotId = z.infer<typeof SlotId>
export const NoteId = id('nte').brand<'NoteId'>()
export type NoteId = z.infer<typeof NoteId>
export const ConcessionId = id('con').brand<'ConcessionId'>()
export type ConcessionId = z.infer<typeof ConcessionId>
export const AskId = id('ask').brand<'AskId'>()
export type AskId = z.infer<typeof AskId>
export const ReadingId = id('rdg').brand<'ReadingId'>()
export type ReadingId = z.infer<typeof ReadingId>
export const AirReadingId = id('air').brand<'AirReadingId'>()
export type AirReadingId = z.infer<typeof AirReadingId>
export const MetalReadingId = id('mtl').brand<'MetalReadingId'>()
export type MetalReadingId = z.infer<typeof MetalReadingId>
export const StepId = id('stp').brand<'StepId'>()
export type StepId = z.infer<typeof StepId>
export const CoatId = id('cot').brand<'CoatId'>()
export type CoatId = z.infer<typeof CoatId>
export const FilmId = id('flm').brand<'FilmId'>()
export type FilmId = z.infer<typeof FilmId>
export const ColourId = id('clr').brand<'ColourId'>()
export type ColourId = z.infer<typeof ColourId>
export const TinterId = id('tnt').brand<'TinterId'>()
export type TinterId = z.infer<typeof TinterId>
export const InDateId = id('ind').brand<'InDateId'>()
export type InDateId = z.infer<typeof InDateId>
export const MilestoneId = id('mst').brand<'MilestoneId'>()
export type MilestoneId = z.infer<typeof MilestoneId>
export const ToldId = id('tld').brand<'ToldId'>()
export type ToldId = z.infer<typeof ToldId>
export const ShopId = id('shp').brand<'ShopId'>()
export type ShopId = z.infer<typeof ShopId>
export const MembershipId = id('mbr').brand<'MembershipId'>()
export type MembershipId = z.infer<typeof MembershipId>
export const BayId = id('bay').brand<'BayId'>()
export type BayId = z.infer<typeof BayId>
/** A person's account; it lies outside the records, which hold only this id (names can be erased). */
export const PersonId = id('psn').brand<'PersonId'>()
export type PersonId = z.infer<typeof PersonId>
/** Stands for whoever works at a shop's phone while nobody has said who it is. No account has this id. */
export const NOBODY = PersonId.parse('psn_nobody')
/** A phone that is signed in for a shop; like accounts it lies outside the records. */
export const DeviceId = id('dev').brand<'DeviceId'>()
export type DeviceId = z.infer<typeof DeviceId>

/** Schema of each kind of id, by its prefix. */
export const idSchemas = {
  prj: ProjectId,
  pty: PartyId,
  ptc: ParticipantId,
  asm: AssemblyId,
  stg: StageId,
  lnk: LinkId,
  chk: CheckId,
  sgn: SignOffId,
  hld: HoldId,
  hnd: HandoverId,
  cho: ChangeOrderId,
  chl: ChangeLineId,
  esl: EstimateLineId,
  prt: PartId,
  prm: PromiseId,
  dcs: DecisionId,
  opt: DecisionOptionId,
  win: OpenWindowId,
  slt: SlotId,
  nte: NoteId,
  con: ConcessionId,
  ask: AskId,
  tld: ToldId,
  rdg: ReadingId,
  air: AirReadingId,
  mtl: MetalReadingId,
  stp: StepId,
  cot: CoatId,
  flm: FilmId,
  clr: ColourId,
  tnt: TinterId,
  ind: InDateId,
  mst: MilestoneId,
  shp: ShopId,
  mbr: MembershipId,
  bay: BayId,
  psn: PersonId,
  dev: DeviceId,
}

/** The three letters that an id begins with. */
export type IdPrefix = keyof typeof idSchemas
export type IdByPrefix = { readonly [P in IdPrefix]: z.infer<(typeof idSchemas)[P]> }
/** The id of an entity of any kind. */
export const EntityId = z.string().check(z.regex(/^[a-z]{3}_[0-9a-z]{1,48}$/, 'an id'))
export type EntityId = z.infer<typeof EntityId>

/** The idempotency key of a command: a UUID version 7 (RFC 9562), made where the press happened. */
export const CommandKey = z
  .string()
  .check(
    z.regex(
      /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
      'a UUID version 7 in lower case',
    ),
  )
  .brand<'CommandKey'>()
export type CommandKey = z.infer<typeof CommandKey>

const parsers: { readonly [P in IdPrefix]: { parse(text: unknown): IdByPrefix[P] } } = idSchemas

/** Makes one new id after another. */
export type NewId = <P extends IdPrefix>(prefix: P) => IdByPrefix[P]

/**
 * Ids that derive from a command's key and a counter, so that phone and server make the same ones.
 * They sort by the time in the key; its 74 random bits make them unguessable.
 */
export function idsFrom(key: CommandKey): NewId {
  const stem = key.replaceAll('-', '')
  let count = 0
  return (prefix) => {
    const counter = (count++).toString(36).padStart(4, '0')
    return parsers[prefix].parse(`${prefix}_${stem}${counter}`)
  }
}
