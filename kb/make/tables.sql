-- The catalogue's tables and views: the one place where they are named and described.
-- The comment above a table and beside a column is what Datasette shows (kb/make/describe.py reads it).
-- "[s]", "[deg]" and the like open a comment with the column's unit. Scales are stored as their words,
-- except in profile, whose numbers the table `scale` explains.

-- What the catalogue was made from, and by what.
CREATE TABLE meta (
    key TEXT PRIMARY KEY, -- schema_version, content_hash or version
    value TEXT NOT NULL -- its value
);

-- The words of each ordered scale and their numbers.
CREATE TABLE scale (
    dial TEXT NOT NULL, -- stage, speed, load or catch
    n INTEGER NOT NULL, -- place in the scale, least first
    word TEXT NOT NULL, -- as an entry writes it
    PRIMARY KEY (dial, n)
);

-- Lifts: what every chain ends in.
CREATE TABLE lift (
    id TEXT PRIMARY KEY, -- file stem, for ever
    name TEXT NOT NULL, -- as people say it
    also TEXT NOT NULL, -- JSON list of other names
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill that is the lift itself
    standard_count INTEGER NOT NULL, -- how many must be good
    standard_of INTEGER NOT NULL, -- of how many
    standard_seen TEXT NOT NULL, -- what is to be seen
    entry TEXT NOT NULL, -- JSON of the front matter
    sections TEXT NOT NULL -- JSON of headings and their Markdown
);

-- The parts of a lift that is made of others.
CREATE TABLE lift_part (
    lift TEXT NOT NULL REFERENCES lift (id), -- the whole
    n INTEGER NOT NULL, -- order, from 0
    part TEXT NOT NULL REFERENCES lift (id), -- the part
    PRIMARY KEY (lift, n)
);

-- The drills whose standards place a lifter.
CREATE TABLE lift_checkpoint (
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    n INTEGER NOT NULL, -- order, from 0: the simplest first
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    PRIMARY KEY (lift, n)
);

-- Postures.
CREATE TABLE position (
    id TEXT PRIMARY KEY, -- file stem, for ever
    name TEXT NOT NULL, -- as people say it
    also TEXT NOT NULL, -- JSON list of other names
    bar TEXT NOT NULL, -- where the bar is
    contact TEXT NOT NULL, -- what touches floor and bar
    entry TEXT NOT NULL, -- JSON of the front matter
    sections TEXT NOT NULL -- JSON of headings and their Markdown
);

-- The named points of each lift's timeline.
CREATE TABLE lift_point (
    lift TEXT NOT NULL REFERENCES lift (id), -- whose timeline
    n INTEGER NOT NULL, -- order, from 0
    point TEXT NOT NULL, -- its name
    position TEXT NOT NULL REFERENCES position (id), -- the posture there
    part TEXT NOT NULL REFERENCES lift (id), -- the part it belongs to; the lift itself without parts
    PRIMARY KEY (lift, n)
);

-- Joint angles of each posture, from the anatomical zero, flexion positive; trunk from the vertical.
CREATE TABLE position_angle (
    position TEXT NOT NULL REFERENCES position (id), -- the posture
    joint TEXT NOT NULL, -- ankle, knee, hip, trunk, shoulder, elbow and so on
    degrees REAL NOT NULL, -- [deg] the angle
    PRIMARY KEY (position, joint)
);

-- Faults: things seen.
CREATE TABLE fault (
    id TEXT PRIMARY KEY, -- file stem, for ever
    name TEXT NOT NULL, -- as people say it
    also TEXT NOT NULL, -- JSON list of other names
    view TEXT NOT NULL, -- where to stand: side, front or back
    gone TEXT NOT NULL, -- what is seen in one repetition without it; empty where nothing is said
    speed TEXT NOT NULL, -- the least speed at which it shows
    load TEXT NOT NULL, -- the least load at which it shows
    catch TEXT NOT NULL, -- the least depth of catch at which it shows
    entry TEXT NOT NULL, -- JSON of the front matter
    sections TEXT NOT NULL -- JSON of headings and their Markdown
);

-- The lifts a fault is seen in.
CREATE TABLE fault_lift (
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    PRIMARY KEY (fault, lift)
);

-- The stretches of the timeline where a fault shows.
CREATE TABLE fault_phase (
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    n INTEGER NOT NULL, -- order, from 0
    first TEXT NOT NULL, -- the point it begins at
    last TEXT NOT NULL, -- the point it ends at
    PRIMARY KEY (fault, n)
);

-- Faults that are easily taken for one another.
CREATE TABLE look_alike (
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    other TEXT NOT NULL REFERENCES fault (id), -- what it may be taken for
    PRIMARY KEY (fault, other)
);

-- Why a fault happens.
CREATE TABLE cause (
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    id TEXT NOT NULL, -- its id within the fault
    n INTEGER NOT NULL, -- order, from 0: the commonest first
    kind TEXT NOT NULL, -- mobility, strength, position-sense, timing, understanding, set-up, nerve or earlier
    text TEXT NOT NULL, -- in words
    throughout TEXT NOT NULL, -- what to set up, change or ask for in every drill; empty where nothing is said
    earlier TEXT REFERENCES fault (id), -- the earlier fault that makes it, for kind earlier alone
    speed TEXT NOT NULL, -- the least speed at which the fault shows for this cause
    load TEXT NOT NULL, -- the least load
    catch TEXT NOT NULL, -- the least depth of catch
    PRIMARY KEY (fault, id)
);

-- Faults made by a fault that is seen before them.
CREATE TABLE made_earlier (
    fault TEXT NOT NULL REFERENCES fault (id), -- the later fault
    cause TEXT NOT NULL, -- which of its causes says so
    earlier TEXT NOT NULL REFERENCES fault (id), -- the fault that makes it
    PRIMARY KEY (fault, cause),
    FOREIGN KEY (fault, cause) REFERENCES cause (fault, id)
);

-- Pieces of equipment; space and people are equipment too.
CREATE TABLE equipment (
    id TEXT PRIMARY KEY, -- file stem, for ever
    name TEXT NOT NULL, -- as people say it
    also TEXT NOT NULL, -- JSON list of other names
    entry TEXT NOT NULL, -- JSON of the front matter
    sections TEXT NOT NULL -- JSON of headings and their Markdown
);

-- Named sets of equipment.
CREATE TABLE kit (
    id TEXT PRIMARY KEY -- stick, home, hall and so on; full is every item
);

-- What is in each kit.
CREATE TABLE kit_item (
    kit TEXT NOT NULL REFERENCES kit (id), -- the kit
    item TEXT NOT NULL REFERENCES equipment (id), -- a piece of equipment in it
    PRIMARY KEY (kit, item)
);

-- What can serve for a piece of equipment, one hop, never chained.
CREATE TABLE stand_in (
    item TEXT NOT NULL REFERENCES equipment (id), -- what is missing
    "using" TEXT NOT NULL REFERENCES equipment (id), -- what serves for it
    lost TEXT NOT NULL, -- what that costs
    speed TEXT NOT NULL, -- the highest speed it allows
    load TEXT NOT NULL, -- the highest load it allows
    catch TEXT NOT NULL, -- the deepest catch it allows
    PRIMARY KEY (item, "using")
);

-- Drills: things done.
CREATE TABLE drill (
    id TEXT PRIMARY KEY, -- file stem, for ever
    name TEXT NOT NULL, -- as people say it
    also TEXT NOT NULL, -- JSON list of other names
    family TEXT NOT NULL, -- the folder it is kept in
    stage TEXT NOT NULL, -- prepare, position, segment, join or whole; finish stands outside the order
    speed TEXT NOT NULL, -- held, slow, paused or full
    load_least TEXT NOT NULL, -- the least load it makes sense at
    load_most TEXT NOT NULL, -- the most
    catch TEXT NOT NULL, -- the depth of receiving posture reached
    feet TEXT NOT NULL, -- still, step or land
    rounds INTEGER NOT NULL, -- rounds of the full dose, or intervals
    reps INTEGER NOT NULL, -- repetitions in a round or at most in a set, each side
    tempo TEXT, -- [s] down-pause-up-pause
    hold_s INTEGER NOT NULL, -- [s] hold at the end of a round, each side
    sides INTEGER NOT NULL, -- 1, or 2 when done left and right
    rest_s INTEGER NOT NULL, -- [s] between rounds
    good INTEGER NOT NULL, -- repetitions that must count, in sets of at most reps; 0 when rounds are done as they are
    success INTEGER, -- [%] of the tries expected to count; empty without good
    every_s INTEGER NOT NULL, -- [s] from the start of one round to the next, for intervals; else 0
    set_up_s INTEGER NOT NULL, -- [s] set-up
    teach_s INTEGER NOT NULL, -- [s] showing it the first time
    work_s INTEGER NOT NULL, -- [s] the full dose, change-over and set-up included
    check_s INTEGER NOT NULL, -- [s] a check: change-over, set-up and one round
    standard_count INTEGER NOT NULL, -- how many must be good before moving on
    standard_of INTEGER NOT NULL, -- of how many
    standard_seen TEXT NOT NULL, -- what is to be seen
    bridge INTEGER NOT NULL, -- 1 when it may serve merely as a stepping stone
    turn_up TEXT, -- how it is made harder without more weight
    suits TEXT, -- whom it suits best
    not_for TEXT, -- who should leave it out
    entry TEXT NOT NULL, -- JSON of the front matter
    sections TEXT NOT NULL -- JSON of headings and their Markdown
);

-- The lifts a drill serves and where on each it stands.
CREATE TABLE drill_lift (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    target_position TEXT REFERENCES position (id), -- the posture it is for
    first TEXT, -- the point of the timeline its reach begins at
    last TEXT, -- the point it ends at
    PRIMARY KEY (drill, lift)
);

-- Points inside a drill's reach that it does not visit.
CREATE TABLE drill_leaves_out (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    point TEXT NOT NULL, -- the point
    PRIMARY KEY (drill, point)
);

-- What helps the lifter in a drill.
CREATE TABLE drill_aid (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    n INTEGER NOT NULL, -- order, from 0
    aid TEXT NOT NULL, -- equipment, or hand
    PRIMARY KEY (drill, n)
);

-- The faults a drill addresses.
CREATE TABLE drill_fault (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    cause TEXT, -- the one cause it acts on; empty for any
    FOREIGN KEY (fault, cause) REFERENCES cause (fault, id)
);

-- What must be held before a drill: of each group any one member.
CREATE TABLE prerequisite (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    grp INTEGER NOT NULL, -- the group, from 0
    member TEXT NOT NULL REFERENCES drill (id), -- a drill that satisfies the group
    PRIMARY KEY (drill, grp, member)
);

-- The parts of a complex, which must be held before it too.
CREATE TABLE part (
    drill TEXT NOT NULL REFERENCES drill (id), -- the complex
    n INTEGER NOT NULL, -- order, from 0
    part TEXT NOT NULL REFERENCES drill (id), -- the part
    PRIMARY KEY (drill, n)
);

-- Easier versions of a drill.
CREATE TABLE regression (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    n INTEGER NOT NULL, -- order, from 0
    easier TEXT NOT NULL REFERENCES drill (id), -- the easier one
    eases TEXT NOT NULL, -- what it eases
    PRIMARY KEY (drill, n)
);

-- What the heaviest load of a drill needs.
CREATE TABLE drill_equipment (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    n INTEGER NOT NULL, -- order, from 0
    item TEXT NOT NULL REFERENCES equipment (id), -- the piece of equipment
    PRIMARY KEY (drill, n)
);

-- What a preparation drill opens.
CREATE TABLE drill_opens (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    opens TEXT NOT NULL, -- a joint or muscle
    PRIMARY KEY (drill, opens)
);

-- The postures a preparation drill is for.
CREATE TABLE drill_for (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    position TEXT NOT NULL REFERENCES position (id), -- the posture
    PRIMARY KEY (drill, position)
);

-- Where care is needed.
CREATE TABLE caution (
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    n INTEGER NOT NULL, -- order, from 0
    caution TEXT NOT NULL, -- shoulder, breath, drop-zone and so on
    PRIMARY KEY (drill, n)
);

-- Quick checks that tell the causes of a fault apart.
CREATE TABLE tell (
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    n INTEGER NOT NULL, -- order, from 0
    do TEXT NOT NULL, -- what to have done
    look TEXT NOT NULL, -- what to look at, as a question
    seconds INTEGER NOT NULL, -- [s] how long it takes
    drill TEXT REFERENCES drill (id), -- the drill it is, if it is one
    PRIMARY KEY (fault, n)
);

-- The causes that the answer to a tell speaks for.
CREATE TABLE tell_cause (
    fault TEXT NOT NULL, -- the fault
    n INTEGER NOT NULL, -- the tell
    cause TEXT NOT NULL, -- a cause that gains
    answer TEXT NOT NULL, -- the answer it gains by: yes or no
    PRIMARY KEY (fault, n, cause, answer),
    FOREIGN KEY (fault, n) REFERENCES tell (fault, n),
    FOREIGN KEY (fault, cause) REFERENCES cause (fault, id)
);

-- Drills that every way from nothing to a lift passes.
CREATE TABLE gateway (
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    PRIMARY KEY (lift, drill)
);

-- The drills that count for each lift, in layers by stage.
CREATE TABLE layer (
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    drill TEXT NOT NULL REFERENCES drill (id), -- the drill
    stage TEXT NOT NULL, -- its layer
    n INTEGER NOT NULL, -- place within the layer, from 0: a drill stands after what it builds on
    PRIMARY KEY (lift, drill)
);

-- Causes that fewer than two drills of the lift address.
CREATE TABLE thin_fault (
    fault TEXT NOT NULL REFERENCES fault (id), -- the fault
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    cause TEXT NOT NULL, -- the cause
    drills INTEGER NOT NULL, -- how many drills address it
    PRIMARY KEY (fault, lift, cause),
    FOREIGN KEY (fault, cause) REFERENCES cause (fault, id)
);

-- Every id, name and other name, folded for looking up.
CREATE TABLE name (
    key TEXT NOT NULL, -- lower case, no accents, single spaces
    kind TEXT NOT NULL, -- lift, position, fault, equipment or drill
    id TEXT NOT NULL, -- the entry
    name TEXT NOT NULL, -- as written
    lift_list TEXT NOT NULL -- ids of the entry's lifts, a space between them
);
CREATE INDEX name_key ON name (key);

-- Places on a lift's dials where some drill can stand, numbered.
CREATE TABLE profile (
    lift TEXT NOT NULL REFERENCES lift (id), -- the lift
    n INTEGER NOT NULL, -- its number
    stage INTEGER NOT NULL, -- see scale
    first INTEGER NOT NULL, -- the timeline point the reach begins at, from 0
    last INTEGER NOT NULL, -- the point it ends at
    left_out INTEGER NOT NULL, -- bit set of points not visited
    speed INTEGER NOT NULL, -- see scale
    load INTEGER NOT NULL, -- see scale
    catch INTEGER NOT NULL, -- see scale
    helped INTEGER NOT NULL, -- 1 when something helps
    PRIMARY KEY (lift, n)
);

-- Sizes of the step from one profile to every other: unsigned 16-bit numbers, little-endian.
CREATE TABLE step_row (
    lift TEXT NOT NULL, -- the lift
    n INTEGER NOT NULL, -- the profile stepped from
    sizes BLOB NOT NULL, -- one step to each profile
    least BLOB NOT NULL, -- the least sum of steps to each profile
    PRIMARY KEY (lift, n),
    FOREIGN KEY (lift, n) REFERENCES profile (lift, n)
);

-- The words of every fault and drill as stems, for finding what a coach means.
CREATE TABLE said (
    kind TEXT NOT NULL, -- fault or drill
    id TEXT NOT NULL, -- the entry
    phrases TEXT NOT NULL, -- a JSON list of the stems of each name and each phrase heard of it on the floor
    words TEXT NOT NULL, -- a JSON list of four: the stems of its names, of what is heard, of its looks, of its causes
    text TEXT NOT NULL, -- the stems of all that a drill says, each once; of a fault nothing
    PRIMARY KEY (kind, id)
);

-- Every entry's words, for searching.
CREATE VIRTUAL TABLE search USING fts5(
    kind UNINDEXED,
    id UNINDEXED,
    name,
    also,
    text,
    tokenize = "porter unicode61 remove_diacritics 2"
);

CREATE INDEX drill_fault_fault ON drill_fault (fault, cause);
CREATE INDEX drill_fault_drill ON drill_fault (drill);
CREATE INDEX drill_lift_lift ON drill_lift (lift);
CREATE INDEX fault_lift_lift ON fault_lift (lift);
CREATE INDEX prerequisite_member ON prerequisite (member);
CREATE INDEX drill_equipment_item ON drill_equipment (item);

-- Which drills work on a fault, and on which cause of it (a drill for any cause is listed under each).
CREATE VIEW drills_for_fault AS
SELECT fault.id AS fault, fault.name AS fault_name, cause.id AS cause, cause.kind,
    drill.id AS drill, drill.name AS drill_name, drill.stage, drill.load_most, drill.work_s
FROM drill_fault
JOIN fault ON fault.id = drill_fault.fault
JOIN cause ON cause.fault = fault.id AND (drill_fault.cause IS NULL OR drill_fault.cause = cause.id)
JOIN drill ON drill.id = drill_fault.drill
JOIN scale ON scale.dial = 'stage' AND scale.word = drill.stage
ORDER BY fault.id, cause.n, scale.n, drill.id;

-- A lift's drills from preparation to the whole lift.
CREATE VIEW drills_by_stage AS
SELECT layer.lift, layer.stage, drill.id AS drill, drill.name, drill_lift.first, drill_lift.last,
    drill.speed, drill.load_least, drill.load_most, drill.catch, drill.work_s
FROM layer
JOIN drill ON drill.id = layer.drill
JOIN scale ON scale.dial = 'stage' AND scale.word = layer.stage
LEFT JOIN drill_lift ON drill_lift.drill = drill.id AND drill_lift.lift = layer.lift
ORDER BY layer.lift, scale.n, layer.n;

-- What to give a lifter for whom a drill is too hard.
CREATE VIEW easier_versions AS
SELECT drill.id AS drill, drill.name, easier.id AS easier, easier.name AS easier_name, regression.eases
FROM regression
JOIN drill ON drill.id = regression.drill
JOIN drill AS easier ON easier.id = regression.easier
ORDER BY drill.id, regression.n;

-- What must be held before a drill; "or" stands between drills any one of which will do. Parts of a complex come last.
CREATE VIEW what_comes_before AS
SELECT drill.id AS drill, drill.name, needed.grp, needed.any_of
FROM drill
JOIN (
    SELECT drill, grp, group_concat(member, ' or ') AS any_of FROM prerequisite GROUP BY drill, grp
    UNION ALL
    SELECT drill, 1000 + n, part FROM part
) AS needed ON needed.drill = drill.id
ORDER BY drill.id, needed.grp;

-- What a drill needs and what can serve for it.
CREATE VIEW gear_for_drill AS
SELECT drill.id AS drill, drill.name, drill_equipment.item, stand_in."using" AS or_using, stand_in.lost, stand_in.load AS at_most
FROM drill_equipment
JOIN drill ON drill.id = drill_equipment.drill
LEFT JOIN stand_in ON stand_in.item = drill_equipment.item
ORDER BY drill.id, drill_equipment.n, stand_in."using";

-- Where in each lift its faults show.
CREATE VIEW faults_by_phase AS
SELECT fault_lift.lift, begins.n AS place, fault_phase.first, fault_phase.last, fault.id AS fault, fault.name, fault.view
FROM fault_phase
JOIN fault ON fault.id = fault_phase.fault
JOIN fault_lift ON fault_lift.fault = fault.id
JOIN lift_point AS begins ON begins.lift = fault_lift.lift AND begins.point = fault_phase.first
ORDER BY fault_lift.lift, begins.n, fault.id;

-- The causes of each fault and the quick checks that speak for them.
CREATE VIEW causes_and_tells AS
SELECT cause.fault, cause.n, cause.id AS cause, cause.kind, cause.text, tell.do, tell.look, tell_cause.answer, tell.seconds
FROM cause
LEFT JOIN tell_cause ON tell_cause.fault = cause.fault AND tell_cause.cause = cause.id
LEFT JOIN tell ON tell.fault = tell_cause.fault AND tell.n = tell_cause.n
ORDER BY cause.fault, cause.n, tell.n;
