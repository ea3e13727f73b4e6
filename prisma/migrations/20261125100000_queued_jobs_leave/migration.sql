-- A job that was put into the queue leaves this table in the same transaction.
drop index "Job_waiting";
alter table "Job" drop column "queuedAt";
