#include "core/store/schema.h"

namespace fettle {

namespace {
// Times are whole milliseconds since 1970-01-01T00:00:00Z (UTC); days are texts "2026-05-04". Text columns
// are never NULL, "" means "not said"; a number that is not known is NULL.
constexpr const char* kFirst = R"sql(
CREATE TABLE meta (                     -- facts about the file as a whole
    key   TEXT NOT NULL PRIMARY KEY,    -- site | time_zone (IANA) | alpha (share of chance entries of the list) |
                                        -- min_reader (lowest schema version that may read) | created (UTC)
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE machine (                  -- the register; texts are those of the newest description
    id          INTEGER PRIMARY KEY,
    tag         TEXT NOT NULL UNIQUE,   -- name on the plant
    asset       TEXT NOT NULL,          -- number in the asset register
    service     TEXT NOT NULL,          -- what it does: "kiln induced-draught fan"
    site        TEXT NOT NULL,
    area        TEXT NOT NULL,
    criticality TEXT NOT NULL,          -- A | B | C
    standby     INTEGER NOT NULL,       -- 1: another one can take over
    by_hand     INTEGER NOT NULL DEFAULT 0,   -- 1: put on the list by hand until taken off
    by_hand_why TEXT NOT NULL DEFAULT '',
    removed_on  TEXT NOT NULL DEFAULT '',     -- day; '': in service
    removed_why TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE description (              -- what was fitted when: each holds from its day until the next one's
    id          INTEGER PRIMARY KEY,
    machine     INTEGER NOT NULL REFERENCES machine,
    from_day    TEXT NOT NULL,          -- day; '': from the beginning
    json        TEXT NOT NULL,          -- machine description as given
    note        TEXT NOT NULL,          -- why it changed
    recorded    INTEGER NOT NULL,       -- when it was entered, ms UTC
    replaced    INTEGER                 -- when a correction took its place, ms UTC; NULL: it holds
) STRICT;
CREATE UNIQUE INDEX description_holding ON description(machine, from_day) WHERE replaced IS NULL;

CREATE TABLE channel (                  -- one series each; a changed direction or unit begins another one
    id        INTEGER PRIMARY KEY,
    machine   INTEGER NOT NULL REFERENCES machine,
    point     TEXT NOT NULL,            -- measuring point: "M-DE"
    name      TEXT NOT NULL,            -- within the recording: "x"
    quantity  TEXT NOT NULL,            -- acceleration | velocity | flux | temperature | ''
    unit      TEXT NOT NULL,            -- of the samples: g, m/s2, mm/s, 1
    direction TEXT NOT NULL,            -- horizontal | vertical | axial | radial | unknown | ''
    UNIQUE (machine, point, name, quantity, unit, direction)
) STRICT;

CREATE TABLE recording (                -- one file as it came
    id              INTEGER PRIMARY KEY,
    key             BLOB NOT NULL UNIQUE,   -- XXH3 128 over bytes of the file, point, channels, time
    machine         INTEGER NOT NULL REFERENCES machine,
    time            INTEGER NOT NULL,   -- first sample, ms UTC
    file            TEXT NOT NULL,      -- path as given
    format          TEXT NOT NULL,      -- WAV | FLAC | CSV
    tag             TEXT NOT NULL,      -- machine as the sidecar named it
    point           TEXT NOT NULL,      -- as the sidecar named it
    capture         TEXT NOT NULL,      -- joins files of one capture
    time_source     TEXT NOT NULL,
    received        INTEGER,            -- ms UTC
    simultaneous    INTEGER,            -- 1: channels at one moment, 0: in turn, NULL: unknown
    sample_rate_hz  REAL NOT NULL,
    samples         INTEGER NOT NULL,   -- in each channel
    given_speed_rpm REAL,               -- of the sidecar
    output_hz       REAL,               -- of the inverter
    frame_temp_c    REAL,
    ambient_temp_c  REAL,
    load_pct        REAL,
    warnings        TEXT NOT NULL,      -- JSON: what the reader assumed, sentences
    sidecar         TEXT NOT NULL,      -- JSON as found; '': none
    running         TEXT NOT NULL,      -- running state as examined
    speed_rpm       REAL,               -- as examined
    speed_pm_rpm    REAL,               -- plus or minus
    late            INTEGER NOT NULL,   -- 1: came for a week whose list was already kept
    imported        INTEGER NOT NULL    -- ms UTC
) STRICT;
CREATE INDEX recording_of_machine ON recording(machine, time);
CREATE INDEX recording_by_time ON recording(time);

CREATE TABLE recording_channel (        -- channels of a recording, in the file's order
    recording  INTEGER NOT NULL REFERENCES recording,
    place      INTEGER NOT NULL,        -- 0, 1, 2 ..
    channel    INTEGER NOT NULL REFERENCES channel,
    unit       TEXT NOT NULL,           -- of the samples, as the file or its sidecar said
    full_scale REAL NOT NULL,           -- largest value of the file's number format; 0: no limit
    bits       INTEGER NOT NULL,        -- of the file's whole numbers; 0: float or text
    scale      REAL NOT NULL,           -- sample = number x 2^(1 - bits) x scale
    PRIMARY KEY (recording, place)
) STRICT, WITHOUT ROWID;

CREATE TABLE waveform (                 -- samples as long as they are kept
    recording INTEGER NOT NULL,
    place     INTEGER NOT NULL,
    digest    INTEGER NOT NULL,         -- XXH3 64 over the samples as little-endian doubles
    data      BLOB NOT NULL,            -- packed without loss, see core/store/waveform_codec.h
    PRIMARY KEY (recording, place),
    FOREIGN KEY (recording, place) REFERENCES recording_channel
) STRICT;

CREATE TABLE trend (                    -- levels of one channel in one recording, in the order of time
    channel            INTEGER NOT NULL REFERENCES channel,
    time               INTEGER NOT NULL,    -- ms UTC
    recording          INTEGER NOT NULL REFERENCES recording,
    running            TEXT NOT NULL,       -- running state
    velocity_rms_mm_s  REAL,                -- 10 (or 2) to 1000 Hz
    acceleration_rms_g REAL,
    peak_g             REAL,
    crest_factor       REAL,
    kurtosis           REAL,
    order1_mm_s        REAL,                -- r.m.s. at 1x, 2x, 3x of the shaft
    order2_mm_s        REAL,
    order3_mm_s        REAL,
    high_band_g        REAL,                -- r.m.s. above 1 kHz
    offset             REAL,                -- mean of the samples, unit of the channel
    speed_rpm          REAL,
    frame_temp_c       REAL,
    ambient_temp_c     REAL,
    load_pct           REAL,
    zone               TEXT NOT NULL,       -- A | B | C | D | ''
    next_limit_mm_s    REAL,                -- next zone boundary up
    PRIMARY KEY (channel, time, recording)
) STRICT, WITHOUT ROWID;

CREATE TABLE spectrum (                 -- for the waterfall, in the order of time
    channel   INTEGER NOT NULL REFERENCES channel,
    kind      INTEGER NOT NULL,         -- 1 velocity mm/s r.m.s. | 2 acceleration g r.m.s. | 3 envelope, ratio to floor
    time      INTEGER NOT NULL,         -- ms UTC
    recording INTEGER NOT NULL REFERENCES recording,
    top_hz    REAL NOT NULL,            -- line i of n covers i to i + 1 times top_hz / n
    lines     BLOB NOT NULL,            -- one byte each: 0 nothing, else 1e-6 x 10^(0.0375 (byte - 1))
    PRIMARY KEY (channel, kind, time, recording)
) STRICT, WITHOUT ROWID;

CREATE TABLE hypothesis (               -- fault keys and places, once each
    id    INTEGER PRIMARY KEY,
    fault TEXT NOT NULL,                -- "bearing_outer_race"
    at    TEXT NOT NULL,                -- "driver DE"
    UNIQUE (fault, at)
) STRICT;

CREATE TABLE weight (                   -- of every hypothesis weighed, in the order of time
    machine     INTEGER NOT NULL REFERENCES machine,
    time        INTEGER NOT NULL,       -- ms UTC
    recording   INTEGER NOT NULL REFERENCES recording,
    hypothesis  INTEGER NOT NULL REFERENCES hypothesis,
    weight_dban REAL NOT NULL,          -- decibans
    PRIMARY KEY (machine, time, recording, hypothesis)
) STRICT, WITHOUT ROWID;

CREATE TABLE examination (              -- everything that was weighed on a recording
    recording INTEGER PRIMARY KEY REFERENCES recording,
    engine    TEXT NOT NULL,            -- version and checksum of the settings
    json      BLOB NOT NULL             -- `examine --json`, packed with zstd
) STRICT;

CREATE TABLE event (                    -- dated facts of a machine's history
    id      INTEGER PRIMARY KEY,
    machine INTEGER NOT NULL REFERENCES machine,
    time    INTEGER NOT NULL,           -- ms UTC
    kind    TEXT NOT NULL,              -- repair greasing part moved_node cleaning inspection note rebaseline
                                        -- low_battery other
    at      TEXT NOT NULL,
    text    TEXT NOT NULL,
    by      TEXT NOT NULL,              -- who said it
    UNIQUE (machine, time, kind, at, text)
) STRICT;

CREATE TABLE feedback (                 -- what the planner found
    id      INTEGER PRIMARY KEY,
    machine INTEGER NOT NULL REFERENCES machine,
    time    INTEGER NOT NULL,           -- ms UTC
    fault   TEXT NOT NULL,
    at      TEXT NOT NULL,
    outcome TEXT NOT NULL,              -- confirmed | not_found | another_fault | not_opened
    code    TEXT NOT NULL,              -- as found, words of ISO 14224 or ISO 15243
    text    TEXT NOT NULL,
    by      TEXT NOT NULL
) STRICT;

CREATE TABLE job (
    id             INTEGER PRIMARY KEY,
    machine        INTEGER NOT NULL REFERENCES machine,
    findings       TEXT NOT NULL,       -- JSON: "bearing_outer_race @ driver DE" ..
    work_order     TEXT NOT NULL,
    state          TEXT NOT NULL,       -- drafted issued scheduled done verified closed
    urgency        TEXT NOT NULL,       -- watch | plan | act
    revision       INTEGER NOT NULL,
    replaces       INTEGER REFERENCES job,
    order_parts_by TEXT NOT NULL,       -- days, or ''
    run_until      TEXT NOT NULL,
    planned_stop   TEXT NOT NULL,
    created        INTEGER NOT NULL     -- ms UTC
) STRICT;

CREATE TABLE refusal (                  -- files that were not taken in
    id         INTEGER PRIMARY KEY,
    path       TEXT NOT NULL,
    place      TEXT NOT NULL,           -- in the file: "byte 44"
    rule       TEXT NOT NULL,           -- the rule broken
    kind       TEXT NOT NULL,           -- refused | parked
    first_seen INTEGER NOT NULL,        -- ms UTC
    last_seen  INTEGER NOT NULL,
    times      INTEGER NOT NULL,
    answered   INTEGER NOT NULL,        -- 1: somebody has seen to it
    UNIQUE (path, rule)
) STRICT;

CREATE TABLE round (                    -- the weekly list
    id                INTEGER PRIMARY KEY,
    from_day          TEXT NOT NULL,    -- first and last day, calendar of the site
    until_day         TEXT NOT NULL,
    engine            TEXT NOT NULL,
    alpha             REAL NOT NULL,    -- share of chance entries the list allows
    list_needs_dban   REAL NOT NULL,    -- weight from which a machine is listed on evidence
    sample_seed       INTEGER NOT NULL, -- of the sample of leave machines; 64 bits
    opened            INTEGER NOT NULL, -- ms UTC
    closed            INTEGER,          -- ms UTC; NULL: open
    closed_by         TEXT NOT NULL DEFAULT '',
    leave_accepted    INTEGER,          -- ms UTC
    leave_accepted_by TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE UNIQUE INDEX one_open_round ON round(closed IS NULL) WHERE closed IS NULL;

CREATE TABLE round_row (                -- a machine in a round, as it was when the round was opened
    round       INTEGER NOT NULL REFERENCES round,
    place       INTEGER NOT NULL,       -- order of the list
    machine     TEXT NOT NULL,          -- tag
    urgency     TEXT NOT NULL,          -- act | plan | watch | unseen | leave
    listed_by   TEXT NOT NULL,          -- evidence | change | zone | hand | none
    weight_dban REAL,
    in_sample   INTEGER NOT NULL,       -- 1: drawn among the leave machines
    json        TEXT NOT NULL,          -- the row as `round --json` has it
    PRIMARY KEY (round, place),
    UNIQUE (round, machine)
) STRICT;

CREATE TABLE round_examination (        -- of a machine's week, for those not on leave
    round   INTEGER NOT NULL,
    machine TEXT NOT NULL,              -- tag
    json    BLOB NOT NULL,              -- packed with zstd
    PRIMARY KEY (round, machine),
    FOREIGN KEY (round, machine) REFERENCES round_row(round, machine)
) STRICT;

CREATE TABLE decision (                 -- appended; the newest of a machine holds
    id       INTEGER PRIMARY KEY,
    round    INTEGER NOT NULL,
    machine  TEXT NOT NULL,             -- tag
    kind     TEXT NOT NULL,             -- accept | dispute | defer
    reason   TEXT NOT NULL,
    defer_to TEXT NOT NULL,             -- day, or ''
    by       TEXT NOT NULL,
    time     INTEGER NOT NULL,          -- ms UTC
    FOREIGN KEY (round, machine) REFERENCES round_row(round, machine)
) STRICT;
CREATE INDEX decision_of_round ON decision(round);

CREATE TABLE round_mark (               -- machines of the sample that were opened, unseen ones answered
    round   INTEGER NOT NULL,
    machine TEXT NOT NULL,              -- tag
    mark    TEXT NOT NULL,              -- opened | unseen
    reason  TEXT NOT NULL,              -- of an unseen one
    by      TEXT NOT NULL,
    time    INTEGER NOT NULL,           -- ms UTC
    PRIMARY KEY (round, machine, mark),
    FOREIGN KEY (round, machine) REFERENCES round_row(round, machine)
) STRICT, WITHOUT ROWID;

-- A kept round never changes.
CREATE TRIGGER round_row_kept BEFORE UPDATE ON round_row
BEGIN SELECT RAISE(ABORT, 'a kept round never changes'); END;
CREATE TRIGGER round_row_stays BEFORE DELETE ON round_row
BEGIN SELECT RAISE(ABORT, 'a kept round never changes'); END;
CREATE TRIGGER round_row_late BEFORE INSERT ON round_row
WHEN (SELECT closed FROM round WHERE id = NEW.round) IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'the round is closed'); END;
CREATE TRIGGER round_closed BEFORE UPDATE ON round WHEN OLD.closed IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'the round is closed'); END;
CREATE TRIGGER round_stays BEFORE DELETE ON round
BEGIN SELECT RAISE(ABORT, 'a kept round never changes'); END;
CREATE TRIGGER decision_late BEFORE INSERT ON decision
WHEN (SELECT closed FROM round WHERE id = NEW.round) IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'the round is closed'); END;
CREATE TRIGGER decision_kept BEFORE UPDATE ON decision
BEGIN SELECT RAISE(ABORT, 'a decision is never changed; decide again'); END;
CREATE TRIGGER decision_stays BEFORE DELETE ON decision
BEGIN SELECT RAISE(ABORT, 'a decision is never changed; decide again'); END;
CREATE TRIGGER round_mark_late BEFORE INSERT ON round_mark
WHEN (SELECT closed FROM round WHERE id = NEW.round) IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'the round is closed'); END;
)sql";

constexpr const char* kSecond = R"sql(
CREATE TABLE measure (                  -- numbers that one fault would raise, once each
    id    INTEGER PRIMARY KEY,
    fault TEXT NOT NULL,                -- "gear_mesh"
    at    TEXT NOT NULL,                -- "G1"
    name  TEXT NOT NULL,                -- which of the fault's numbers: "mesh 1-3 x"
    unit  TEXT NOT NULL,                -- mm/s | g | dB | 1
    UNIQUE (fault, at, name, unit)
) STRICT;

CREATE TABLE measured (                 -- their values in one recording, in the order of time
    channel   INTEGER NOT NULL REFERENCES channel,
    measure   INTEGER NOT NULL REFERENCES measure,
    time      INTEGER NOT NULL,         -- ms UTC
    recording INTEGER NOT NULL REFERENCES recording,
    value     REAL NOT NULL,            -- in the measure's unit
    PRIMARY KEY (channel, measure, time, recording)
) STRICT, WITHOUT ROWID;
)sql";

constexpr const char* kThird = R"sql(
CREATE TABLE photo (                    -- pictures beside a dated event
    id    INTEGER PRIMARY KEY,
    event INTEGER NOT NULL REFERENCES event,
    name  TEXT NOT NULL,                -- of the file as given, without its folder
    media TEXT NOT NULL,                -- image/jpeg | image/png
    bytes BLOB NOT NULL                 -- as given
) STRICT;
CREATE INDEX photo_of_event ON photo(event);

CREATE TABLE job_step (                 -- what became of a job, appended
    id    INTEGER PRIMARY KEY,
    job   INTEGER NOT NULL REFERENCES job,
    state TEXT NOT NULL,                -- as in job
    time  INTEGER NOT NULL,             -- ms UTC
    text  TEXT NOT NULL,
    by    TEXT NOT NULL
) STRICT;
CREATE INDEX step_of_job ON job_step(job);

CREATE TABLE request (                  -- recordings asked for beyond the usual ones
    id        INTEGER PRIMARY KEY,
    machine   INTEGER NOT NULL REFERENCES machine,
    by_hand   INTEGER NOT NULL,         -- 0: of the node; 1: on the walk with the hand instrument
    point     TEXT NOT NULL,            -- id of a point, or a place: "driven DE"
    direction TEXT NOT NULL,            -- horizontal vertical axial radial, or ''
    what      TEXT NOT NULL,            -- length, band, lines
    why       TEXT NOT NULL,
    asked     INTEGER NOT NULL,         -- ms UTC
    asked_by  TEXT NOT NULL,
    answered  INTEGER,                  -- ms UTC; NULL: still open
    recording INTEGER REFERENCES recording -- that answered it; NULL: none did
) STRICT;

CREATE TABLE workshop (                 -- balancing jobs and seeded-fault trials
    id      INTEGER PRIMARY KEY,
    machine INTEGER NOT NULL REFERENCES machine,
    kind    TEXT NOT NULL,              -- balance | trial
    name    TEXT NOT NULL,
    created INTEGER NOT NULL,           -- ms UTC
    changed INTEGER NOT NULL,           -- ms UTC
    closed  INTEGER,                    -- ms UTC; NULL: in work
    json    TEXT NOT NULL               -- runs, masses, coefficients; promise, spans, result
) STRICT;
CREATE INDEX workshop_of_machine ON workshop(machine);

CREATE TABLE reading_rule (             -- what files are taken for where neither they nor a sidecar say
    id      INTEGER PRIMARY KEY,
    pattern TEXT NOT NULL UNIQUE,       -- of the path as given: * within a name, ** across folders
    json    TEXT NOT NULL,              -- keys of a sidecar
    created INTEGER NOT NULL,           -- ms UTC
    by      TEXT NOT NULL
) STRICT;
)sql";

constexpr const char* kFifth = R"sql(
CREATE TABLE sidecar_pattern (          -- a sidecar that later ones of its point are kept as changes of
    id      INTEGER PRIMARY KEY,
    machine INTEGER NOT NULL REFERENCES machine,
    point   TEXT NOT NULL,              -- as the sidecar named it
    text    BLOB NOT NULL               -- JSON, zstd
) STRICT;
CREATE INDEX sidecar_pattern_of_point ON sidecar_pattern(machine, point);

CREATE TABLE sidecar (                  -- of a recording whose own column is ''; none in either: there was none
    recording INTEGER PRIMARY KEY REFERENCES recording,
    pattern   INTEGER NOT NULL REFERENCES sidecar_pattern,
    data      BLOB NOT NULL             -- JSON as found, zstd with the pattern's text as prefix
) STRICT;
)sql";
}  // namespace

const std::vector<Migration>& migrations() {
    static const std::vector<Migration> all = {
        {1, "register, recordings, trends, spectra, weights, examinations, log, rounds", kFirst, 1},
        {2, "measures of faults, followed over weeks", kSecond, 1},
        // A program before takes a decision that was withdrawn since for an accepted one.
        {3, "photographs, steps of a job, requests, balancing and trials, reading rules", kThird, 3},
        {4, "spectra by spans of time, retention, alerts, what re-examination changed", fourthStep(), 3},
        // A program before would give recordings out without their sidecars.
        {5, "sidecars as what they change of an earlier one", kFifth, 5},
    };
    return all;
}

}  // namespace fettle
