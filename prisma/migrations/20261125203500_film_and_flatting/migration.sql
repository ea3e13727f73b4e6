-- Flatting says how much it takes off; a coat that was sanded through at one place says to what; a film reading says how it was taken.
alter table "Stage" add column "flats" double precision check ("flats" > 0);
alter table "Coat"
  add column "sandedAt" timestamptz(3),
  add column "sandedTo" text check ("sandedTo" in ('bare metal', 'etch primer', 'rust converter', 'epoxy', 'filler', 'sprayed polyester', 'high build', 'isolator', 'seam sealer', 'colour', 'lacquer', 'chassis coat', 'wax', 'plating', 'powder')),
  add column "sandedPlace" text;
alter table "Film"
  add column "method" text not null check ("method" in ('magnetic', 'eddy current')),
  add column "zeroed" boolean not null;
