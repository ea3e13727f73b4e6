-- Phones that are signed in for a shop. They are ways in, as accounts and links are, and lie outside the records as these do.
create table "ShopDevice" (
  "id" text primary key check ("id" ~ '^dev_[0-9a-z]{1,48}$'),
  "shop" text not null references "Shop" ("id"),
  "name" text not null,
  -- Null while the phone wasn't brought in yet, and once it is out.
  "tokenHash" text unique check ("tokenHash" ~ '^[0-9a-f]{64}$'),
  "addedBy" text not null references "Person" ("id"),
  "addedAt" timestamptz(3) not null default now(),
  "lastSeenAt" timestamptz(3),
  "revokedBy" text references "Person" ("id"),
  "revokedAt" timestamptz(3),
  "demo" boolean not null default false
);
create index "ShopDevice_of" on "ShopDevice" ("shop");

-- What a hand of a shop signs with on its phones. "once" is for the first one: a manager shows it, and it works once.
create table "HandCode" (
  "shop" text not null references "Shop" ("id"),
  "person" text not null references "Person" ("id"),
  "codeHash" text,
  "setAt" timestamptz(3),
  "onceHash" text,
  "onceUntil" timestamptz(3),
  "resetBy" text references "Person" ("id"),
  "resetAt" timestamptz(3),
  primary key ("shop", "person"),
  check (("codeHash" is null) = ("setAt" is null)),
  check (("onceHash" is null) = ("onceUntil" is null))
);

-- Through which phone an entry came; null where somebody was signed in as themselves.
alter table "JournalEntry" add column "device" text check ("device" ~ '^dev_[0-9a-z]{1,48}$');

alter table "SignInLink" drop constraint "SignInLink_purpose_check";
alter table "SignInLink" add constraint "SignInLink_purpose_check"
  check ("purpose" in ('invitation', 'magic', 'receipt', 'device'));
