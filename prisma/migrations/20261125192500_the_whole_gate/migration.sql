-- What the whole gate reads: readings one by one, the air at the work, the metal while it cures, steps, coats, the colour, what is in date,
-- agreed payments.
create table "Reading" (
  "id" text primary key check ("id" ~ '^rdg_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "check" text not null,
  "values" double precision[] not null,
  "entered" double precision[] not null,
  "enteredUnit" text,
  "least" double precision,
  "greatest" double precision,
  "verdict" text not null check ("verdict" in ('passed', 'out of limits', 'kept')),
  "instrument" text,
  "calibratedOn" date,
  "place" text not null check ("place" in ('at the work', 'typed in later')),
  "takenAt" timestamptz(3) not null,
  "at" timestamptz(3) not null,
  "by" text,
  "remark" text not null,
  "replacedBy" text,
  "reason" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "AirReading" (
  "id" text primary key check ("id" ~ '^air_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "party" text not null,
  "bay" text,
  "air" double precision not null,
  "surface" double precision not null,
  "humidity" double precision not null,
  "takenAt" timestamptz(3) not null,
  "at" timestamptz(3) not null,
  "by" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "MetalReading" (
  "id" text primary key check ("id" ~ '^mtl_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "celsius" double precision not null,
  "takenAt" timestamptz(3) not null,
  "at" timestamptz(3) not null,
  "by" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Step" (
  "id" text primary key check ("id" ~ '^stp_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "position" integer not null,
  "text" text not null,
  "tools" text[] not null,
  "caution" text,
  "tickedAt" timestamptz(3),
  "tickedBy" text,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Coat" (
  "id" text primary key check ("id" ~ '^cot_[0-9a-z]{1,48}$'),
  "project" text not null,
  "assembly" text not null,
  "stage" text,
  "party" text not null,
  "product" text not null check ("product" in ('etch primer', 'rust converter', 'epoxy', 'filler', 'sprayed polyester', 'high build', 'isolator', 'seam sealer', 'colour', 'lacquer', 'chassis coat', 'wax', 'plating', 'powder')),
  "name" text,
  "batch" text,
  "ratio" text,
  "thinner" text,
  "coats" integer not null,
  "endedAt" timestamptz(3) not null,
  "keyedWith" text,
  "keyedAt" timestamptz(3),
  "colour" text,
  "air" text,
  "remark" text not null,
  "by" text,
  "at" timestamptz(3) not null,
  "offAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Film" (
  "id" text primary key check ("id" ~ '^flm_[0-9a-z]{1,48}$'),
  "project" text not null,
  "assembly" text not null,
  "stage" text,
  "panel" text not null,
  "point" text not null,
  "microns" double precision not null,
  "metal" text not null check ("metal" in ('steel', 'aluminium')),
  "gauge" text,
  "at" timestamptz(3) not null,
  "by" text,
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Colour" (
  "id" text primary key check ("id" ~ '^clr_[0-9a-z]{1,48}$'),
  "project" text not null,
  "party" text not null,
  "name" text not null,
  "code" text,
  "variant" text,
  "batch" text,
  "cardAt" timestamptz(3),
  "cardBy" text,
  "gun" text,
  "keepsake" text,
  "at" timestamptz(3) not null,
  "by" text,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Tinter" (
  "id" text primary key check ("id" ~ '^tnt_[0-9a-z]{1,48}$'),
  "project" text not null,
  "colour" text not null,
  "position" integer not null,
  "name" text not null,
  "grams" double precision not null,
  "batch" text,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "InDate" (
  "id" text primary key check ("id" ~ '^ind_[0-9a-z]{1,48}$'),
  "project" text not null,
  "party" text not null,
  "thing" text not null check ("thing" in ('booth clearance', 'lifting examination', 'fit for spraying', 'torque wrench')),
  "name" text not null,
  "person" text,
  "minutes" double precision,
  "doneOn" date not null,
  "until" date not null,
  "by" text not null,
  "at" timestamptz(3) not null,
  "withdrawnAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

create table "Milestone" (
  "id" text primary key check ("id" ~ '^mst_[0-9a-z]{1,48}$'),
  "project" text not null,
  "stage" text not null,
  "party" text not null,
  "payer" text not null,
  "name" text not null,
  "net" bigint,
  "agreedAt" timestamptz(3) not null,
  "agreedBy" text not null,
  "metAt" timestamptz(3),
  "metBy" text,
  "remark" text not null,
  "removedAt" timestamptz(3),
  "version" integer not null check ("version" >= 1),
  "made" integer not null check ("made" between 1 and "version"),
  unique ("project", "id")
);

alter table "Reading"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "check") references "Check" ("project", "id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred,
  add foreign key ("project", "replacedBy") references "Reading" ("project", "id") deferrable initially deferred;
alter table "AirReading"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "MetalReading"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "Step"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("tickedBy") references "Person" ("id") deferrable initially deferred;
alter table "Coat"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "assembly") references "Assembly" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "colour") references "Colour" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "air") references "AirReading" ("project", "id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "Film"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "assembly") references "Assembly" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "Colour"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("cardBy") references "Person" ("id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "Tinter"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "colour") references "Colour" ("project", "id") deferrable initially deferred;
alter table "InDate"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("person") references "Person" ("id") deferrable initially deferred,
  add foreign key ("by") references "Person" ("id") deferrable initially deferred;
alter table "Milestone"
  add foreign key ("project") references "Project" ("id") deferrable initially deferred,
  add foreign key ("project", "stage") references "Stage" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "party") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("project", "payer") references "Party" ("project", "id") deferrable initially deferred,
  add foreign key ("agreedBy") references "Person" ("id") deferrable initially deferred,
  add foreign key ("metBy") references "Person" ("id") deferrable initially deferred;

alter table "Stage"
  add column "hazards" text[] not null default '{}' check ("hazards" <@ array['isocyanate', 'dust', 'solvent', 'hot work', 'lifting', 'springs', 'fuel', 'battery', 'brakes', 'coolant', 'rotating parts', 'high pressure', 'chemicals', 'asbestos', 'lead', 'cutting', 'crushing', 'structure', 'road']),
  add column "precautionsAt" timestamptz(3),
  add column "precautionsBy" text references "Person" ("id") deferrable initially deferred,
  add column "airAgeMost" double precision,
  add column "dewMarginLeast" double precision,
  add column "humidityMost" double precision,
  add column "surfaceLeast" double precision,
  add column "surfaceMost" double precision,
  add column "inDate" text[] not null default '{}' check ("inDate" <@ array['booth clearance', 'lifting examination', 'fit for spraying', 'torque wrench']),
  add column "lays" text check ("lays" in ('etch primer', 'rust converter', 'epoxy', 'filler', 'sprayed polyester', 'high build', 'isolator', 'seam sealer', 'colour', 'lacquer', 'chassis coat', 'wax', 'plating', 'powder')),
  add column "keys" boolean not null default false,
  add column "people" integer not null default 1,
  add column "trade" text,
  add column "madeFrom" text;
alter table "Link"
  add column "why" text,
  add column "safety" boolean not null default false,
  add column "curesAt" double precision;
alter table "Check"
  drop constraint "Check_type_check",
  add constraint "Check_type_check" check ("type" in ('reading', 'photo', 'tick', 'document', 'signature')),
  add column "points" text[] not null default '{}',
  add column "basis" text check ("basis" in ('typical', 'maker', 'agreed')),
  add column "limitSource" text,
  add column "limitWanted" boolean not null default false,
  add column "needsInstrument" boolean not null default false;
alter table "Concession" add column "file" text;
alter table "Hold" add column "noticeDays" integer not null default 2;
alter table "Assembly" add column "holdsFuel" boolean not null default false;
