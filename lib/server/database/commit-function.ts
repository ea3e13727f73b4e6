import type pg from 'pg'
import { entitySchemas, type Kind } from '../../record/entity.ts'
import { KEPT_COLUMNS, tableOf } from './tables.ts'

/** What `commit_record` answers where it writes nothing, besides Postgres's own codes. */
export const SQLSTATE = {
  /** A record isn't at the version that was decided on: another node was first. */
  lostRace: 'FY001',
  /** A key has been carried out before. */
  keySeen: 'FY002',
  /** A row that was to change isn't in its record. */
  rowMissing: 'FY003',
  approvedChange: 'FY010',
  journalRewritten: 'FY011',
} as const

/** The channel on which a commit tells the other nodes. */
export const CHANNEL = 'fettleyard_commit'

/** Fields of one call: Postgres takes no more than 100 arguments, and a field needs two. */
const MOST_FIELDS = 49

interface Column {
  readonly name: string
  readonly type: string
}
type Columns = ReadonlyMap<Kind, readonly Column[]>

/**
 * Makes the database's two functions from its tables, so that a new entity needs no SQL by hand:
 * `commit_record` writes a save or nothing, `record_entities` reads a record or what changed of it.
 */
export async function installFunctions(client: pg.ClientBase): Promise<void> {
  const columns = await columnsIn(client)
  await client.query(commitFunction(columns))
  await client.query(readFunction(columns))
}

async function columnsIn(client: pg.ClientBase): Promise<Columns> {
  const { rows } = await client.query<{ table: string; name: string; type: string }>(
    `select c.relname as table, a.attname as name, format_type(a.atttypid, null) as type
       from pg_attribute a join pg_class c on c.oid = a.attrelid
      where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and a.attnum > 0 and not a.attisdropped
      order by c.relname, a.attnum`,
  )
  const found = new Map<Kind, readonly Column[]>()
  for (const kind of kinds()) {
    const columns = rows.filter(({ table }) => table === tableOf[kind])
    if (columns.length === 0) throw new Error(`There is no table ${tableOf[kind]} for ${kind}.`)
    found.set(kind, columns)
  }
  return found
}

const isKind = (name: string): name is Kind => name in entitySchemas
const kinds = (): Kind[] => Object.keys(entitySchemas).filter(isKind)

/** Tables in one order for every save; lines of a change order before the order that their trigger asks about. */
const inSaveOrder = (columns: Columns): [Kind, readonly Column[]][] =>
  [...columns].sort(([a], [b]) => (tableOf[a] < tableOf[b] ? -1 : 1))

const quoted = (name: string) => `"${name}"`
const has = (columns: readonly Column[], name: string) => columns.some((c) => c.name === name)

/** Which record's rows an update may touch: nobody's id leads into another record. */
function sameRecord(columns: readonly Column[]): string {
  const owner = ['project', 'shop'].find((name) => has(columns, name))
  return owner === undefined ? '' : ` and t.${quoted(owner)} = r ->> '${owner}'`
}

/** A column's value out of a row in JSON: some times faster than `jsonb_populate_recordset`, which looks types up each time. */
function fromJson({ name, type }: Column): string {
  const key = `'${name}'`
  if (type === 'text[]') return `array(select jsonb_array_elements_text(r -> ${key}))`
  if (type === 'double precision[]')
    return `array(select jsonb_array_elements_text(r -> ${key})::double precision)`
  return type === 'text' ? `r ->> ${key}` : `(r ->> ${key})::${type}`
}

function insertOf(kind: Kind, columns: readonly Column[]): string {
  return `when '${tableOf[kind]}' then
        insert into ${quoted(tableOf[kind])} (${columns.map(({ name }) => quoted(name)).join(', ')})
          select ${columns.map(fromJson).join(', ')} from jsonb_array_elements(rows) r;`
}

function updateOf(kind: Kind, columns: readonly Column[]): string {
  const sets = columns
    .filter(({ name }) => !['id', 'made', 'recordVersion'].includes(name))
    .map((column) => `${quoted(column.name)} = ${fromJson(column)}`)
  return `when '${tableOf[kind]}' then
        update ${quoted(tableOf[kind])} t set ${sets.join(', ')}
          from jsonb_array_elements(rows) r where t."id" = r ->> 'id'${sameRecord(columns)};`
}

/** Moves the records of one kind to their new versions; those that are new (from 0) are made by their own rows. */
const moveRecords = (table: string, key: string): string => `
  rows := save -> '${key}';
  if rows <> '[]' then
    update ${quoted(table)} t set "recordVersion" = (r ->> 'to')::integer from jsonb_array_elements(rows) r
      where t."id" = r ->> 'id' and t."recordVersion" = (r ->> 'from')::integer;
    get diagnostics written = row_count;
    if written <> jsonb_array_length(rows) then
      raise exception 'Another node was first.' using errcode = '${SQLSTATE.lostRace}';
    end if;
  end if;`

/** Holds a record that was only read at its version until the save is done. */
const holdRead = (table: string): string => `
    select count(*) + written into written from (
      select 1 from ${quoted(table)} t join jsonb_array_elements(rows) r on t."id" = r ->> 'id'
        where t."recordVersion" = (r ->> 'from')::integer for share of t) held;`

/** Locks are taken in the order of the ids, so that two saves never wait for each other. */
const commitFunction = (columns: Columns): string => `
create or replace function commit_record(save jsonb) returns void language plpgsql as $function$
declare
  rows jsonb;
  written integer := 0;
  target text;
begin
  perform pg_advisory_xact_lock(hashtextextended(id #>> '{}', 0)) from jsonb_array_elements(save -> 'records') id;

  rows := save -> 'keys';
  insert into "IdempotencyKey" ("person", "key", "payloadHash", "answer")
    select r ->> 'person', r ->> 'key', r ->> 'payloadHash', r -> 'answer' from jsonb_array_elements(rows) r
    on conflict do nothing;
  get diagnostics written = row_count;
  if written <> jsonb_array_length(rows) then
    raise exception 'Carried out before.' using errcode = '${SQLSTATE.keySeen}';
  end if;
${moveRecords('Project', 'projects')}
${moveRecords('Shop', 'shops')}

  rows := save -> 'reads';
  if rows <> '[]' then
    written := 0;${holdRead('Project')}${holdRead('Shop')}
    if written <> jsonb_array_length(rows) then
      raise exception 'Another node was first.' using errcode = '${SQLSTATE.lostRace}';
    end if;
  end if;

  for target, rows in select t.key, t.value from jsonb_each(save -> 'inserts') t order by t.key loop
    case target
      ${inSaveOrder(columns)
        .map(([kind, own]) => insertOf(kind, own))
        .join('\n      ')}
    end case;
  end loop;
  for target, rows in select t.key, t.value from jsonb_each(save -> 'updates') t order by t.key loop
    case target
      ${inSaveOrder(columns)
        .map(([kind, own]) => updateOf(kind, own))
        .join('\n      ')}
    end case;
    get diagnostics written = row_count;
    if written <> jsonb_array_length(rows) then
      raise exception 'A row of % is not in its record.', target using errcode = '${SQLSTATE.rowMissing}';
    end if;
  end loop;

  insert into "JournalEntry" ("record", "sequence", "at", "happenedAt", "person", "party", "role", "command", "device", "key", "previousHash", "hash", "parts")
    select r ->> 'record', (r ->> 'sequence')::integer, (r ->> 'at')::timestamptz, (r ->> 'happenedAt')::timestamptz, r ->> 'person',
      r ->> 'party', r ->> 'role', r ->> 'command', r ->> 'device', r ->> 'key', r ->> 'previousHash', r ->> 'hash', r -> 'parts'
    from jsonb_array_elements(save -> 'entries') r;
  if save -> 'jobs' <> '[]' then
    insert into "Job" ("name", "payload") select r ->> 'name', r -> 'payload' from jsonb_array_elements(save -> 'jobs') r;
  end if;
  perform pg_notify('${CHANNEL}', save ->> 'notice');
end $function$`

/** A column as the record has it: instants to the millisecond in UTC, days as days. */
function asField({ name, type }: Column): string {
  const column = `t.${quoted(name)}`
  return type === 'timestamp with time zone'
    ? `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`
    : column
}

function selectOf(kind: Kind, columns: readonly Column[], owner: string, version: string): string {
  const fields = columns
    .filter(({ name }) => !KEPT_COLUMNS.includes(name))
    .map((column) => `'${column.name}', ${asField(column)}`)
  const made = version === 'shopVersion' ? `0` : `t."made"`
  return `select '${kind}'::text as kind, t.${quoted(version)} as version, ${made} as made, t."id",
    ${objectOf([`'kind', '${kind}'`, ...fields])} as entity
    from ${quoted(tableOf[kind])} t where t.${quoted(owner)} = $1 and t.${quoted(version)} > $2`
}

/** A JSON object of fields, each a name and a value; in pieces where one call can't take them all. */
function objectOf(fields: readonly string[]): string {
  if (fields.length <= MOST_FIELDS) return `json_build_object(${fields.join(', ')})`
  const pieces: string[] = []
  for (let from = 0; from < fields.length; from += MOST_FIELDS)
    pieces.push(`jsonb_build_object(${fields.slice(from, from + MOST_FIELDS).join(', ')})`)
  return `(${pieces.join(' || ')})::json`
}

function selectsOf(kind: Kind, columns: readonly Column[]): string[] {
  if (kind === 'project' || kind === 'shop') return [selectOf(kind, columns, 'id', 'version')]
  const selects: string[] = []
  if (has(columns, 'project')) selects.push(selectOf(kind, columns, 'project', 'version'))
  if (has(columns, 'shopVersion')) selects.push(selectOf(kind, columns, 'shop', 'shopVersion'))
  else if (!has(columns, 'project')) selects.push(selectOf(kind, columns, 'shop', 'version'))
  return selects
}

/** The entities of a record that changed after a version, in the order they were made; after 0: all of them. */
const readFunction = (columns: Columns): string => `
create or replace function record_entities(text, integer)
returns table ("version" integer, "entity" json) language sql stable as $function$
  select rows.version, rows.entity from (
${[...columns].flatMap(([kind, own]) => selectsOf(kind, own)).join('\n    union all\n')}
  ) rows order by rows.made, rows.id
$function$`
