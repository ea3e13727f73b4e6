-- The record's tables, one an entity, columns named as its fields. What the database can enforce, it enforces.
create extension if not exists btree_gist;
create extension if not exists citext;

-- Accounts lie outside the records, which hold only a person's id: a name can be changed or erased.
create table "Person" (
  "id" text primary key check ("id" ~ '^psn_[0-9a-z]{1,48}$'),
  "name" text not null check ("name" ~ '\S'),
  "email" citext not null unique check ("email" ~ '^\S+@\S+$'),
  "passwordHash" text,
  "locale" text not null default 'en-GB',
  -- Sessions from before this moment are over.
  "signedOutAt" timestamptz(3),
  "removedAt" timestamptz(3),
  "demo" boolean not null default false,
  "createdAt" timestamptz(3) not null default now()
);

create table "Project" (
  "id" text primary key check ("id" ~ '^prj_[0-9a-z]{1,48}$'),
  "name" text not null,
  "year" integer,
  "description" text not null,
  "currency" text not null check ("currency" ~ '^[A-Z]{3}$'),
  "timeZone" text not null,
  "standingConsentEach" bigint check ("standingConsentEach" between -9007199254740991 and 9007199254740991),
  "standingConsentTotal" bigint check ("standingConsentTotal" between -9007199254740991 and 9007199254740991),
  "demo" boolean not null,
  "createdAt" timestamptz(3) not null,
  -- Counts the record's commands; "version" is the one that last changed this row.
  "recordVersion" integer not null check ("recordVersion" >= "version"),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version")
);

create table "Party" (
  "id" text primary key check ("id" ~ '^pty_[0-9a-z]{1,48}$'),
  "project" text not null,
  "name" text not null,
  "role" text not null check ("role" in ('owner', 'shop', 'supplier', 'observer')),
  "lead" boolean not null,
  "shop" text,
  "bills" text not null check ("bills" in ('owner', 'lead')),
  "leftAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Participant" (
  "id" text primary key check ("id" ~ '^ptc_[0-9a-z]{1,48}$'),
  "project" text not null,
  "party" text not null,
  "person" text not null,
  "since" timestamptz(3) not null,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Assembly" (
  "id" text primary key check ("id" ~ '^asm_[0-9a-z]{1,48}$'),
  "project" text not null,
  "name" text not null,
  "pieces" integer not null check ("pieces" >= 1),
  "custodian" text not null,
  "since" timestamptz(3) not null,
  "host" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Stage" (
  "id" text primary key check ("id" ~ '^stg_[0-9a-z]{1,48}$'),
  "project" text not null,
  "number" integer not null check ("number" >= 1),
  "name" text not null,
  "group" text,
  "party" text not null,
  "assemblies" text[] not null,
  "host" text,
  "fits" text[] not null,
  "removes" text[] not null,
  "needsFitted" text[] not null,
  "needsOff" text[] not null,
  "needsBay" boolean not null,
  "exclusive" boolean not null,
  "hoursLeast" double precision check ("hoursLeast" between 0 and 100000),
  "hoursLikely" double precision check ("hoursLikely" between 0 and 100000),
  "hoursMost" double precision check ("hoursMost" between 0 and 100000),
  "safety" boolean not null,
  "caution" text,
  "changeOrder" text,
  "decision" text,
  "handoverTo" text,
  "countersigns" text[] not null,
  "state" text not null check ("state" in ('planned', 'in work', 'paused', 'ended', 'signed off', 'in doubt', 'reopened')),
  "startedAt" timestamptz(3),
  "startedBy" text,
  "pausedAt" timestamptz(3),
  "endedAt" timestamptz(3),
  "endedBy" text,
  "signedOffAt" timestamptz(3),
  "reported" text,
  "doubt" text,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Link" (
  "id" text primary key check ("id" ~ '^lnk_[0-9a-z]{1,48}$'),
  "project" text not null,
  "from" text not null,
  "to" text not null,
  "leastLagHours" double precision not null check ("leastLagHours" between 0 and 100000),
  "greatestLagHours" double precision check ("greatestLagHours" between 0 and 100000),
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id"),
  check ("from" <> "to")
);

create table "Check" (
  "id" text primary key check ("id" ~ '^chk_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "position" integer not null,
  "type" text not null check ("type" in ('reading', 'photo', 'tick', 'document')),
  "name" text not null,
  "unit" text,
  "least" double precision,
  "greatest" double precision,
  "state" text not null check ("state" in ('missing', 'passed', 'out of limits')),
  "value" double precision,
  "firstValue" double precision,
  "text" text,
  "files" text[] not null,
  "by" text,
  "at" timestamptz(3),
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "SignOff" (
  "id" text primary key check ("id" ~ '^sgn_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "party" text not null,
  "type" text not null check ("type" in ('sign-off', 'countersign', 'confirm')),
  "person" text not null,
  "at" timestamptz(3) not null,
  "withdrawnAt" timestamptz(3),
  "reason" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Hold" (
  "id" text primary key check ("id" ~ '^hld_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "point" text not null check ("point" in ('hold', 'witness')),
  "name" text not null,
  "party" text not null,
  "person" text,
  "state" text not null check ("state" in ('set', 'invited', 'released', 'waived')),
  "setAt" timestamptz(3) not null,
  "invitedAt" timestamptz(3),
  "visitAt" timestamptz(3),
  "clearedAt" timestamptz(3),
  "clearedBy" text,
  "remark" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Concession" (
  "id" text primary key check ("id" ~ '^con_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "rule" text not null,
  "entity" text not null,
  "reason" text not null,
  "needs" text[] not null,
  "parties" text[] not null,
  "person" text not null,
  "at" timestamptz(3) not null,
  "withdrawnAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Ask" (
  "id" text primary key check ("id" ~ '^ask_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "rule" text not null,
  "entity" text not null,
  "from" text not null,
  "to" text not null,
  "text" text not null,
  "person" text not null,
  "at" timestamptz(3) not null,
  "closedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Handover" (
  "id" text primary key check ("id" ~ '^hnd_[0-9a-z]{1,48}$'),
  "project" text not null,
  "assemblies" text[] not null,
  "from" text not null,
  "to" text not null,
  "stage" text,
  "state" text not null check ("state" in ('prepared', 'released', 'received', 'refused', 'taken back')),
  "condition" text not null,
  "care" text not null,
  "pieces" integer check ("pieces" >= 1),
  "files" text[] not null,
  "preparedAt" timestamptz(3) not null,
  "releasedAt" timestamptz(3),
  "releasedBy" text,
  "receivedAt" timestamptz(3),
  "receivedBy" text,
  "receivedByName" text,
  "signature" text,
  "receivedPieces" integer check ("receivedPieces" >= 0),
  "outcome" text check ("outcome" in ('accepted', 'accepted with remarks', 'refused')),
  "remarks" text,
  "receivedFiles" text[] not null,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "ChangeOrder" (
  "id" text primary key check ("id" ~ '^cho_[0-9a-z]{1,48}$'),
  "project" text not null,
  "number" integer not null check ("number" >= 1),
  "title" text not null,
  "text" text not null,
  "reason" text not null check ("reason" in ('found', 'asked for', 'mistake', 'law')),
  "party" text not null,
  "bears" text not null check ("bears" in ('owner', 'shop', 'insurer', 'disputed')),
  "state" text not null check ("state" in ('draft', 'sent', 'approved', 'declined', 'withdrawn')),
  "days" integer,
  "files" text[] not null,
  "raisedAt" timestamptz(3) not null,
  "raisedBy" text not null,
  "sentAt" timestamptz(3),
  "answeredAt" timestamptz(3),
  "answeredBy" text,
  "proof" text check ("proof" in ('password', 'mailed code', 'demonstration', 'standing consent')),
  "shown" text,
  "shownHash" text check ("shownHash" ~ '^[0-9a-f]{64}$'),
  "answer" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "ChangeLine" (
  "id" text primary key check ("id" ~ '^chl_[0-9a-z]{1,48}$'),
  "project" text not null,
  "changeOrder" text not null,
  "party" text not null,
  "position" integer not null,
  "text" text not null,
  "quantity" double precision,
  "unit" text,
  "unitPrice" bigint check ("unitPrice" between -9007199254740991 and 9007199254740991),
  "net" bigint not null check ("net" between -9007199254740991 and 9007199254740991),
  "taxRate" integer not null check ("taxRate" between 0 and 10000),
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "EstimateLine" (
  "id" text primary key check ("id" ~ '^esl_[0-9a-z]{1,48}$'),
  "project" text not null,
  "party" text not null,
  "position" integer not null,
  "text" text not null,
  "type" text not null check ("type" in ('fixed', 'allowance')),
  "net" bigint not null check ("net" between -9007199254740991 and 9007199254740991),
  "taxRate" integer not null check ("taxRate" between 0 and 10000),
  "withdrawnAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Decision" (
  "id" text primary key check ("id" ~ '^dcs_[0-9a-z]{1,48}$'),
  "project" text not null,
  "question" text not null,
  "text" text not null,
  "party" text not null,
  "chooser" text not null,
  "decideBy" date,
  "state" text not null check ("state" in ('asked', 'chosen', 'withdrawn')),
  "askedAt" timestamptz(3) not null,
  "chosen" text,
  "chosenAt" timestamptz(3),
  "chosenBy" text,
  "reason" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "DecisionOption" (
  "id" text primary key check ("id" ~ '^opt_[0-9a-z]{1,48}$'),
  "project" text not null,
  "decision" text not null,
  "party" text not null,
  "chooser" text not null,
  "position" integer not null,
  "text" text not null,
  "net" bigint check ("net" between -9007199254740991 and 9007199254740991),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Part" (
  "id" text primary key check ("id" ~ '^prt_[0-9a-z]{1,48}$'),
  "project" text not null,
  "name" text not null,
  "number" text,
  "party" text not null,
  "supplier" text,
  "stages" text[] not null,
  "state" text not null check ("state" in ('wanted', 'ordered', 'arrived', 'inspected', 'rejected')),
  "price" bigint check ("price" between -9007199254740991 and 9007199254740991),
  "wantedAt" timestamptz(3) not null,
  "orderedAt" timestamptz(3),
  "arrivedAt" timestamptz(3),
  "inspectedAt" timestamptz(3),
  "inspectedBy" text,
  "remark" text,
  "withdrawnAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "PartPromise" (
  "id" text primary key check ("id" ~ '^prm_[0-9a-z]{1,48}$'),
  "project" text not null,
  "part" text not null,
  "date" date not null,
  "by" text not null,
  "madeAt" timestamptz(3) not null,
  "remark" text not null,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "OpenWindow" (
  "id" text primary key check ("id" ~ '^win_[0-9a-z]{1,48}$'),
  "project" text not null,
  "assembly" text not null,
  "bay" text,
  "from" timestamptz(3) not null,
  "to" timestamptz(3) not null,
  "openedAt" timestamptz(3) not null,
  "closedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id"),
  check ("from" < "to")
);

create table "Slot" (
  "id" text primary key check ("id" ~ '^slt_[0-9a-z]{1,48}$'),
  "project" text not null,
  "shop" text not null,
  "bay" text not null,
  "assembly" text not null,
  "stage" text,
  "party" text not null,
  "from" timestamptz(3) not null,
  "to" timestamptz(3) not null,
  "state" text not null check ("state" in ('asked', 'agreed', 'released')),
  "askedAt" timestamptz(3) not null,
  "agreedAt" timestamptz(3),
  "agreedBy" text,
  "window" text,
  "reason" text,
  "version" integer not null check ("version" >= 1),
  -- The shop book's version at its last change.
  "shopVersion" integer not null check ("shopVersion" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id"),
  check ("from" < "to")
);

create table "Note" (
  "id" text primary key check ("id" ~ '^nte_[0-9a-z]{1,48}$'),
  "project" text not null,
  "on" text not null,
  "type" text not null check ("type" in ('note', 'question', 'answer')),
  "sharing" text not null check ("sharing" in ('shop', 'shared')),
  "business" text,
  "text" text not null,
  "party" text not null,
  "person" text not null,
  "at" timestamptz(3) not null,
  "withdrawnAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Told" (
  "id" text primary key check ("id" ~ '^tld_[0-9a-z]{1,48}$'),
  "project" text not null,
  "entity" text not null,
  "party" text not null,
  "command" text not null,
  "person" text not null,
  "at" timestamptz(3) not null,
  "confirmedAt" timestamptz(3),
  "confirmedBy" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Shop" (
  "id" text primary key check ("id" ~ '^shp_[0-9a-z]{1,48}$'),
  "name" text not null,
  "currency" text not null check ("currency" ~ '^[A-Z]{3}$'),
  "timeZone" text not null,
  "taxRegistered" boolean not null,
  "taxRate" integer not null check ("taxRate" between 0 and 10000),
  "opensAt" text not null check ("opensAt" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
  "closesAt" text not null check ("closesAt" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
  "demo" boolean not null,
  "createdAt" timestamptz(3) not null,
  -- Counts the record's commands; "version" is the one that last changed this row.
  "recordVersion" integer not null check ("recordVersion" >= "version"),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version")
);

create table "Membership" (
  "id" text primary key check ("id" ~ '^mbr_[0-9a-z]{1,48}$'),
  "shop" text not null,
  "person" text not null,
  "role" text not null check ("role" in ('manager', 'hand')),
  "since" timestamptz(3) not null,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("shop", "id")
);

create table "Bay" (
  "id" text primary key check ("id" ~ '^bay_[0-9a-z]{1,48}$'),
  "shop" text not null,
  "name" text not null,
  "type" text not null,
  "retiredAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("shop", "id")
);

-- References are checked at the end of a save, so that a save may write its rows in any order. Within a project they
-- name the project too: nothing of one car can hang on another's.
alter table "Party"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("shop") references "Shop" ("id") deferrable initially deferred;
alter table "Participant"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred;
alter table "Assembly"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "custodian") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "host") references "Assembly" ("project", "id") deferrable initially deferred;
alter table "Stage"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "host") references "Assembly" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "changeOrder") references "ChangeOrder" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "decision") references "Decision" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "handoverTo") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("startedBy") references "Person" ("id") deferrable initially deferred,
  add foreign key ("endedBy") references "Person" ("id") deferrable initially deferred;
alter table "Link"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "from") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "to") references "Stage" ("project", "id") deferrable initially deferred;
alter table "Check"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "SignOff"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred;
alter table "Hold"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred,
  add foreign key ("clearedBy") references "Person" ("id") deferrable initially deferred;
alter table "Concession"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred;
alter table "Ask"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "from") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "to") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred;
alter table "Handover"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "from") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "to") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("releasedBy") references "Person" ("id") deferrable initially deferred,
  add foreign key ("receivedBy") references "Person" ("id") deferrable initially deferred;
alter table "ChangeOrder"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("raisedBy") references "Person" ("id") deferrable initially deferred,
  add foreign key ("answeredBy") references "Person" ("id") deferrable initially deferred;
alter table "ChangeLine"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "changeOrder") references "ChangeOrder" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred;
alter table "EstimateLine"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred;
alter table "Decision"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "chooser") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "chosen") references "DecisionOption" ("project", "id") deferrable initially deferred,
  add foreign key ("chosenBy") references "Person" ("id") deferrable initially deferred;
alter table "DecisionOption"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "decision") references "Decision" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "chooser") references "Party" ("project", "id") deferrable initially deferred;
alter table "Part"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "supplier") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("inspectedBy") references "Person" ("id") deferrable initially deferred;
alter table "PartPromise"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "part") references "Part" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "by") references "Party" ("project", "id") deferrable initially deferred;
alter table "OpenWindow"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "assembly") references "Assembly" ("project", "id") deferrable initially deferred,
  add foreign key ("bay") references "Bay" ("id") deferrable initially deferred;
alter table "Slot"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("shop") references "Shop" ("id") deferrable initially deferred,
  add foreign key ("shop", "bay") references "Bay" ("shop", "id") deferrable initially deferred,
  add foreign key ("project", "assembly") references "Assembly" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "agreedBy") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "window") references "OpenWindow" ("project", "id") deferrable initially deferred;
alter table "Note"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "business") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred;
alter table "Told"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred,
  add foreign key ("confirmedBy") references "Person" ("id") deferrable initially deferred;
alter table "Membership"
  add foreign key ("shop") references "Shop" ("id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred;
alter table "Bay"
  add foreign key ("shop") references "Shop" ("id") deferrable initially deferred;

-- Arrays of ids: what a foreign key would do, for each element.
create function refuse_dangling() returns trigger language plpgsql as $$
declare
  missing text;
begin
  execute format(
    'select id from unnest(($1).%I) as id where not exists (select 1 from %I t where t.id = id.id and t.project = ($1).project)',
    tg_argv[0], tg_argv[1]) into missing using new;
  if missing is not null then
    raise foreign_key_violation using message = format('%s of %s names %s, which this project has not.', tg_argv[0], new.id, missing);
  end if;
  return null;
end $$;

create constraint trigger "Stage_assemblies_exist" after insert or update of "assemblies" on "Stage"
  deferrable initially deferred for each row when (new."assemblies" <> '{}')
  execute function refuse_dangling('assemblies', 'Assembly');
create constraint trigger "Stage_fits_exist" after insert or update of "fits" on "Stage"
  deferrable initially deferred for each row when (new."fits" <> '{}')
  execute function refuse_dangling('fits', 'Assembly');
create constraint trigger "Stage_removes_exist" after insert or update of "removes" on "Stage"
  deferrable initially deferred for each row when (new."removes" <> '{}')
  execute function refuse_dangling('removes', 'Assembly');
create constraint trigger "Stage_needsFitted_exist" after insert or update of "needsFitted" on "Stage"
  deferrable initially deferred for each row when (new."needsFitted" <> '{}')
  execute function refuse_dangling('needsFitted', 'Assembly');
create constraint trigger "Stage_needsOff_exist" after insert or update of "needsOff" on "Stage"
  deferrable initially deferred for each row when (new."needsOff" <> '{}')
  execute function refuse_dangling('needsOff', 'Assembly');
create constraint trigger "Stage_countersigns_exist" after insert or update of "countersigns" on "Stage"
  deferrable initially deferred for each row when (new."countersigns" <> '{}')
  execute function refuse_dangling('countersigns', 'Party');
create constraint trigger "Concession_needs_exist" after insert or update of "needs" on "Concession"
  deferrable initially deferred for each row when (new."needs" <> '{}')
  execute function refuse_dangling('needs', 'Party');
create constraint trigger "Concession_parties_exist" after insert or update of "parties" on "Concession"
  deferrable initially deferred for each row when (new."parties" <> '{}')
  execute function refuse_dangling('parties', 'Party');
create constraint trigger "Handover_assemblies_exist" after insert or update of "assemblies" on "Handover"
  deferrable initially deferred for each row when (new."assemblies" <> '{}')
  execute function refuse_dangling('assemblies', 'Assembly');
create constraint trigger "Part_stages_exist" after insert or update of "stages" on "Part"
  deferrable initially deferred for each row when (new."stages" <> '{}')
  execute function refuse_dangling('stages', 'Stage');

-- One of a kind.
create unique index "Party_lead" on "Party" ("project") where "lead";
create unique index "Party_owner" on "Party" ("project") where "role" = 'owner' and "leftAt" is null;
create unique index "Party_shop" on "Party" ("project", "shop") where "leftAt" is null;
create unique index "Participant_person" on "Participant" ("party", "person") where "removedAt" is null;
create unique index "Membership_person" on "Membership" ("shop", "person") where "removedAt" is null;
create unique index "Stage_number" on "Stage" ("project", "number");
create unique index "ChangeOrder_number" on "ChangeOrder" ("project", "number");
create unique index "Link_from_to" on "Link" ("project", "from", "to") where "removedAt" is null;

-- Where somebody belongs.
create index "Participant_of" on "Participant" ("person") where "removedAt" is null;
create index "Membership_of" on "Membership" ("person") where "removedAt" is null;
create index "Party_of" on "Party" ("shop");
create index "Slot_of" on "Slot" ("shop", "from");

-- One assembly at a time in a bay, and an assembly in one bay at a time.
alter table "Slot"
  add constraint "Slot_bay_once" exclude using gist ("bay" with =, tstzrange("from", "to") with &&) where ("state" = 'agreed'),
  add constraint "Slot_assembly_once" exclude using gist ("assembly" with =, tstzrange("from", "to") with &&) where ("state" = 'agreed');

-- An approved change order never changes, nor do its lines.
create function refuse_change_of_approved() returns trigger language plpgsql as $$
begin
  raise exception 'Change order % is approved and never changes.', old.id using errcode = 'FY010';
end $$;
create trigger "ChangeOrder_approved" before update or delete on "ChangeOrder"
  for each row when (old."state" = 'approved') execute function refuse_change_of_approved();

create function refuse_line_of_approved() returns trigger language plpgsql as $$
begin
  if exists (select 1 from "ChangeOrder" o where o.id = coalesce(new."changeOrder", old."changeOrder") and o."state" = 'approved')
    or exists (select 1 from "ChangeOrder" o where o.id = old."changeOrder" and o."state" = 'approved') then
    raise exception 'The lines of an approved change order never change.' using errcode = 'FY010';
  end if;
  return coalesce(new, old);
end $$;
create trigger "ChangeLine_approved" before insert or update or delete on "ChangeLine"
  for each row execute function refuse_line_of_approved();

-- The history of each record: append-only, hash-chained. "parts" are [{scope, salt, hash, value}].
create table "JournalEntry" (
  "record" text not null check ("record" ~ '^(prj|shp)_[0-9a-z]{1,48}$'),
  "sequence" integer not null check ("sequence" >= 1),
  "at" timestamptz(3) not null,
  "happenedAt" timestamptz(3) not null,
  "person" text not null,
  "party" text,
  "role" text not null,
  "command" text not null,
  "key" text not null,
  "previousHash" text not null check ("previousHash" ~ '^[0-9a-f]{64}$'),
  "hash" text not null check ("hash" ~ '^[0-9a-f]{64}$'),
  "parts" jsonb not null check (jsonb_typeof("parts") = 'array'),
  primary key ("record", "sequence"),
  unique ("record", "key")
);

-- All that may ever happen to an entry: a personal part loses its value and its salt. Its hash stays, so the chain holds.
create function refuse_rewriting() returns trigger language plpgsql as $$
begin
  if tg_op = 'UPDATE' then
    if to_jsonb(new) - 'parts' = to_jsonb(old) - 'parts'
      and jsonb_array_length(new."parts") = jsonb_array_length(old."parts")
      and not exists (
        select 1
        from jsonb_array_elements(old."parts") with ordinality as o (part, i)
        join jsonb_array_elements(new."parts") with ordinality as n (part, i) using (i)
        where n.part <> o.part
          and not (o.part ->> 'scope' = 'personal' and n.part = o.part - 'value' - 'salt'))
    then
      return new;
    end if;
  end if;
  raise exception 'The journal is never rewritten.' using errcode = 'FY011';
end $$;
create trigger "JournalEntry_append_only" before update or delete on "JournalEntry"
  for each row execute function refuse_rewriting();
create trigger "JournalEntry_whole" before truncate on "JournalEntry"
  for each statement execute function refuse_rewriting();

-- Answers to commands that were carried out; "answer" names the entries, [{record, sequence}].
create table "IdempotencyKey" (
  "person" text not null,
  "key" text not null,
  "payloadHash" text not null check ("payloadHash" ~ '^[0-9a-f]{64}$'),
  "answer" jsonb not null,
  "at" timestamptz(3) not null default now(),
  primary key ("person", "key")
);

-- Work that follows a commit: here exactly when the commit is.
create table "Job" (
  "id" bigint generated always as identity primary key,
  "name" text not null,
  "payload" jsonb not null,
  "at" timestamptz(3) not null default now(),
  "queuedAt" timestamptz(3)
);
create index "Job_waiting" on "Job" ("id") where "queuedAt" is null;

-- A link that stands for a person once: an invitation, a sign-in by mail, the receipt of one handover.
create table "SignInLink" (
  "id" text primary key,
  "person" text references "Person" ("id"),
  "purpose" text not null check ("purpose" in ('invitation', 'magic', 'receipt')),
  "tokenHash" text not null unique check ("tokenHash" ~ '^[0-9a-f]{64}$'),
  "record" text,
  "entity" text,
  "createdAt" timestamptz(3) not null default now(),
  "expiresAt" timestamptz(3) not null,
  "usedAt" timestamptz(3),
  check ("purpose" = 'receipt' or "person" is not null)
);
create index "SignInLink_of" on "SignInLink" ("person");

-- Files by their bytes: equal ones are kept once within a project only.
create table "FileBlob" (
  "project" text not null references "Project" ("id"),
  "sha256" text not null check ("sha256" ~ '^[0-9a-f]{64}$'),
  "bytes" bigint not null check ("bytes" between 0 and 9007199254740991),
  "type" text not null,
  "uploadedBy" text not null references "Person" ("id"),
  "at" timestamptz(3) not null default now(),
  primary key ("project", "sha256")
);
