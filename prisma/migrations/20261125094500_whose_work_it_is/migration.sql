-- Everyone who began a stage or went on with it: none of them releases its hold points.
alter table "Stage" add column "workedBy" text[] not null default '{}';
