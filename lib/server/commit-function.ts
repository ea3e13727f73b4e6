import type pg from 'pg'
import { entitySchemas, type Kind } from '../record/entity.ts'
import { KEPT_COLUMNS, tableOf } from './tables.ts'

/** What `commit_record` answers where it writes nothing, besides Postgres's own codes. */
export const SQLSTATE = {
  /** A record isn't at the version that was decided on: another node was first. */
  lostRace: 'FY001',
  /** A key has been carried out before; the detail lists them as JSON. */
  keySeen: 'FY002',
  /** A row that was to change isn't in its record. */
  rowMissing: 'FY003',
  approvedChange: 'FY010',
  journalRewritten: 'FY011',
} as const

/** The channel on which a commit tells the other nodes. */
export const CHANNEL = 'fettleyard_commit'

/** Postgres takes no more arguments in a call than these; a field needs two. */
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
    if (columns.length > MOST_FIELDS) throw new Error(`${tableOf[kind]} has too many columns.`)
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
  return owner === undefined ? '' : ` and t.${quoted(owner)} = r.${quoted(owner)}`
}

function writesOf(kind: Kind, columns: readonly Column[]): string {
  const table = quoted(tableOf[kind])
  const key = `'${tableOf[kind]}'`
  const sets = columns
    .filter(({ name }) => !['id', 'made', 'recordVersion'].includes(name))
    .map(({ name }) => `${quoted(name)} = r.${quoted(name)}`)
    .join(', ')
  return `
  rows := save -> 'inserts' -> ${key};
  if rows is not null then
    insert into ${table} select * from jsonb_populate_recordset(null::${table}, rows);
  end if;
  rows := save -> 'updates' -> ${key};
  if rows is not null then
    update ${table} t set ${sets}
      from jsonb_populate_recordset(null::${table}, rows) r where t."id" = r."id"${sameRecord(columns)};
    get diagnostics written = row_count;
    if written <> jsonb_array_length(rows) then
      raise exception 'A row of ${tableOf[kind]} is not in its record.' using errcode = '${SQLSTATE.rowMissing}';
    end if;
  end if;`
}

const bump = (table: string) => `
      if (touched ->> 'from')::integer = (touched ->> 'to')::integer then
        perform 1 from ${quoted(table)} t where t."id" = touched ->> 'id'
          and t."recordVersion" = (touched ->> 'from')::integer for share;
      else
        update ${quoted(table)} t set "recordVersion" = (touched ->> 'to')::integer
          where t."id" = touched ->> 'id' and t."recordVersion" = (touched ->> 'from')::integer;
      end if;`

/** Records come in id order, so that two saves never wait for each other. A new record (from 0) is made by its own row. */
const commitFunction = (columns: Columns): string => `
create or replace function commit_record(save jsonb) returns void language plpgsql as $function$
declare
  touched jsonb;
  rows jsonb;
  written integer;
  seen jsonb;
begin
  for touched in select * from jsonb_array_elements(save -> 'records') loop
    perform pg_advisory_xact_lock(hashtextextended(touched ->> 'id', 0));
  end loop;
  rows := save -> 'keys';
  with kept as (
    insert into "IdempotencyKey" ("person", "key", "payloadHash", "answer")
    select "person", "key", "payloadHash", "answer" from jsonb_populate_recordset(null::"IdempotencyKey", rows)
    on conflict do nothing returning "key")
  select jsonb_agg(r ->> 'key') into seen from jsonb_array_elements(rows) r
    where r ->> 'key' not in (select "key" from kept);
  if seen is not null then
    raise exception 'Carried out before.' using errcode = '${SQLSTATE.keySeen}', detail = seen::text;
  end if;
  for touched in select * from jsonb_array_elements(save -> 'records') loop
    if (touched ->> 'from')::integer > 0 then
      if touched ->> 'id' like 'prj\\_%' then${bump('Project')}
      else${bump('Shop')}
      end if;
      if not found then
        raise exception 'Another node was first.' using errcode = '${SQLSTATE.lostRace}', detail = touched ->> 'id';
      end if;
    end if;
  end loop;
${inSaveOrder(columns)
  .map(([kind, own]) => writesOf(kind, own))
  .join('\n')}

  insert into "JournalEntry" select * from jsonb_populate_recordset(null::"JournalEntry", save -> 'entries');
  insert into "Job" ("name", "payload") select j ->> 'name', j -> 'payload' from jsonb_array_elements(save -> 'jobs') j;
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
    json_build_object('kind', '${kind}', ${fields.join(', ')}) as entity
    from ${quoted(tableOf[kind])} t where t.${quoted(owner)} = $1 and t.${quoted(version)} > $2`
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
