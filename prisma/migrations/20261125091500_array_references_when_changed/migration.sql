-- An update writes every column of a row; references in arrays are looked at only where they are others than before.
drop trigger "Stage_assemblies_exist" on "Stage";
create constraint trigger "Stage_assemblies_exist" after insert on "Stage"
  deferrable initially deferred for each row when (new."assemblies" <> '{}')
  execute function refuse_dangling('assemblies', 'Assembly');
create constraint trigger "Stage_assemblies_exist_still" after update on "Stage"
  deferrable initially deferred for each row when (new."assemblies" <> '{}' and new."assemblies" is distinct from old."assemblies")
  execute function refuse_dangling('assemblies', 'Assembly');
drop trigger "Stage_fits_exist" on "Stage";
create constraint trigger "Stage_fits_exist" after insert on "Stage"
  deferrable initially deferred for each row when (new."fits" <> '{}')
  execute function refuse_dangling('fits', 'Assembly');
create constraint trigger "Stage_fits_exist_still" after update on "Stage"
  deferrable initially deferred for each row when (new."fits" <> '{}' and new."fits" is distinct from old."fits")
  execute function refuse_dangling('fits', 'Assembly');
drop trigger "Stage_removes_exist" on "Stage";
create constraint trigger "Stage_removes_exist" after insert on "Stage"
  deferrable initially deferred for each row when (new."removes" <> '{}')
  execute function refuse_dangling('removes', 'Assembly');
create constraint trigger "Stage_removes_exist_still" after update on "Stage"
  deferrable initially deferred for each row when (new."removes" <> '{}' and new."removes" is distinct from old."removes")
  execute function refuse_dangling('removes', 'Assembly');
drop trigger "Stage_needsFitted_exist" on "Stage";
create constraint trigger "Stage_needsFitted_exist" after insert on "Stage"
  deferrable initially deferred for each row when (new."needsFitted" <> '{}')
  execute function refuse_dangling('needsFitted', 'Assembly');
create constraint trigger "Stage_needsFitted_exist_still" after update on "Stage"
  deferrable initially deferred for each row when (new."needsFitted" <> '{}' and new."needsFitted" is distinct from old."needsFitted")
  execute function refuse_dangling('needsFitted', 'Assembly');
drop trigger "Stage_needsOff_exist" on "Stage";
create constraint trigger "Stage_needsOff_exist" after insert on "Stage"
  deferrable initially deferred for each row when (new."needsOff" <> '{}')
  execute function refuse_dangling('needsOff', 'Assembly');
create constraint trigger "Stage_needsOff_exist_still" after update on "Stage"
  deferrable initially deferred for each row when (new."needsOff" <> '{}' and new."needsOff" is distinct from old."needsOff")
  execute function refuse_dangling('needsOff', 'Assembly');
drop trigger "Stage_countersigns_exist" on "Stage";
create constraint trigger "Stage_countersigns_exist" after insert on "Stage"
  deferrable initially deferred for each row when (new."countersigns" <> '{}')
  execute function refuse_dangling('countersigns', 'Party');
create constraint trigger "Stage_countersigns_exist_still" after update on "Stage"
  deferrable initially deferred for each row when (new."countersigns" <> '{}' and new."countersigns" is distinct from old."countersigns")
  execute function refuse_dangling('countersigns', 'Party');
drop trigger "Concession_needs_exist" on "Concession";
create constraint trigger "Concession_needs_exist" after insert on "Concession"
  deferrable initially deferred for each row when (new."needs" <> '{}')
  execute function refuse_dangling('needs', 'Party');
create constraint trigger "Concession_needs_exist_still" after update on "Concession"
  deferrable initially deferred for each row when (new."needs" <> '{}' and new."needs" is distinct from old."needs")
  execute function refuse_dangling('needs', 'Party');
drop trigger "Concession_parties_exist" on "Concession";
create constraint trigger "Concession_parties_exist" after insert on "Concession"
  deferrable initially deferred for each row when (new."parties" <> '{}')
  execute function refuse_dangling('parties', 'Party');
create constraint trigger "Concession_parties_exist_still" after update on "Concession"
  deferrable initially deferred for each row when (new."parties" <> '{}' and new."parties" is distinct from old."parties")
  execute function refuse_dangling('parties', 'Party');
drop trigger "Handover_assemblies_exist" on "Handover";
create constraint trigger "Handover_assemblies_exist" after insert on "Handover"
  deferrable initially deferred for each row when (new."assemblies" <> '{}')
  execute function refuse_dangling('assemblies', 'Assembly');
create constraint trigger "Handover_assemblies_exist_still" after update on "Handover"
  deferrable initially deferred for each row when (new."assemblies" <> '{}' and new."assemblies" is distinct from old."assemblies")
  execute function refuse_dangling('assemblies', 'Assembly');
drop trigger "Part_stages_exist" on "Part";
create constraint trigger "Part_stages_exist" after insert on "Part"
  deferrable initially deferred for each row when (new."stages" <> '{}')
  execute function refuse_dangling('stages', 'Stage');
create constraint trigger "Part_stages_exist_still" after update on "Part"
  deferrable initially deferred for each row when (new."stages" <> '{}' and new."stages" is distinct from old."stages")
  execute function refuse_dangling('stages', 'Stage');
