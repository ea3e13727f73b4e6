-- A line is for its shop's managers alone until its order is sent.
alter table "ChangeLine" add column "sentAt" timestamptz(3);
