-- A hold point that was set by mistake is removed; it stays readable.
alter table "Hold" add column "removedAt" timestamptz(3);
