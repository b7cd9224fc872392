#include "core/store/schema.h"

#include <string>

namespace fettle {

namespace {
// A string a concern; the step runs them in this order. Times and texts as in schema.cpp.
constexpr const char* kSpectra = R"sql(
CREATE TABLE spectrum_span (            -- largest of every line over a span of time; stays when spectra are thinned
    channel INTEGER NOT NULL REFERENCES channel,
    kind    INTEGER NOT NULL,           -- as in spectrum
    level   INTEGER NOT NULL,           -- 1: four hours | 2: a day, from midnight UTC
    start   INTEGER NOT NULL,           -- ms UTC
    top_hz  REAL NOT NULL,              -- spectra of another top have a row of their own
    spectra INTEGER NOT NULL,           -- how many went in, whether they are still kept or not
    loudest INTEGER NOT NULL REFERENCES recording, -- whose spectrum held the largest line
    at      INTEGER NOT NULL,           -- ms UTC, of that recording
    lines   BLOB NOT NULL,              -- as in spectrum
    PRIMARY KEY (channel, kind, level, start, top_hz)
) STRICT, WITHOUT ROWID;

CREATE TABLE spans_to_build (           -- series from before there were spans: until then read from spectrum
    channel INTEGER NOT NULL REFERENCES channel,
    kind    INTEGER NOT NULL,
    PRIMARY KEY (channel, kind)
) STRICT, WITHOUT ROWID;
INSERT INTO spans_to_build
SELECT c.id, k.kind FROM channel c CROSS JOIN (SELECT 1 AS kind UNION ALL SELECT 2 UNION ALL SELECT 3) k
WHERE EXISTS (SELECT 1 FROM spectrum s WHERE s.channel = c.id AND s.kind = k.kind);

-- What is thinned before its spans are built would be lost to them.
CREATE TRIGGER spectrum_awaited BEFORE DELETE ON spectrum
WHEN EXISTS (SELECT 1 FROM spans_to_build WHERE channel = OLD.channel AND kind = OLD.kind)
BEGIN SELECT RAISE(ABORT, 'spans of this series are not built yet'); END;
)sql";

constexpr const char* kRetention = R"sql(
CREATE TABLE retention_rule (           -- how long what is kept; ages count back from a point's newest recording
    what        TEXT NOT NULL PRIMARY KEY,  -- waveforms | spectra | examinations; trends stay for ever
    all_days    INTEGER NOT NULL,       -- every one
    daily_days  INTEGER,                -- then one a day for so long; NULL: for ever
    weekly_days INTEGER                 -- then one a week for so long; NULL: for ever
) STRICT;
INSERT INTO retention_rule VALUES
    ('waveforms', 2, 90, NULL), ('spectra', 30, NULL, NULL), ('examinations', 30, NULL, NULL);

CREATE TABLE retention_run (            -- each time something was taken away
    id      INTEGER PRIMARY KEY,
    started INTEGER NOT NULL,           -- ms UTC
    by      TEXT NOT NULL,
    rules   TEXT NOT NULL               -- how long what was kept then, in words
) STRICT;

CREATE TABLE thinned (                  -- what was taken from a recording: the run that did; NULL: nothing
    recording   INTEGER PRIMARY KEY REFERENCES recording,
    waveform    INTEGER REFERENCES retention_run,
    spectra     INTEGER REFERENCES retention_run,
    examination INTEGER REFERENCES retention_run
) STRICT;
)sql";

constexpr const char* kAlerts = R"sql(
CREATE TABLE alert_rule (               -- what is told between two rounds
    id           INTEGER PRIMARY KEY,
    name         TEXT NOT NULL UNIQUE,
    kind         TEXT NOT NULL,         -- weight | zone | stage | growth | silence
    fault        TEXT NOT NULL,         -- weight, stage: key or how it begins ("bearing"); '': any
    grade        TEXT NOT NULL,         -- zone: C | D; stage: early | developed | late; ''
    least        REAL,                  -- weight: decibans; growth: percent in a week; silence: times the interval
    least_hours  REAL,                  -- silence: and at least so long
    hits         INTEGER NOT NULL,      -- so many recordings
    of           INTEGER NOT NULL,      -- of the newest running ones of a point, sensor checks passed
    ask_second   INTEGER NOT NULL,      -- 1: one recording asks for another, which makes two enough
    machine      TEXT NOT NULL,         -- tag; '': all
    area         TEXT NOT NULL,         -- '': all
    criticality  TEXT NOT NULL,         -- A | B | C; '': all
    deliver      TEXT NOT NULL,         -- now (also in quiet hours) | day (when they end) | digest | list
    enabled      INTEGER NOT NULL       -- 1: it is asked
) STRICT;
INSERT INTO alert_rule(name, kind, fault, grade, least, least_hours, hits, of, ask_second, machine, area,
                       criticality, deliver, enabled) VALUES
    ('Zone D', 'zone', '', 'D', NULL, NULL, 1, 5, 0, '', '', '', 'now', 1),
    ('Late stage', 'stage', '', 'late', NULL, NULL, 3, 5, 0, '', '', '', 'day', 1),
    ('Strong evidence', 'weight', '', '', 30, NULL, 3, 5, 0, '', '', '', 'day', 1),
    ('Level grows', 'growth', '', '', 50, NULL, 3, 5, 0, '', '', '', 'digest', 1),
    ('Silent sensor', 'silence', '', '', 6, 48, 1, 1, 0, '', '', '', 'digest', 1);

CREATE TABLE alert (                    -- one a machine, fault and place while it is not cleared
    id               INTEGER PRIMARY KEY,
    machine          INTEGER NOT NULL REFERENCES machine,
    fault            TEXT NOT NULL,     -- fault key; '': raised vibration, no cause named; sensor: silence
    at               TEXT NOT NULL,     -- place: "driver DE"; of a sensor its point
    rule             TEXT NOT NULL,     -- name of the rule that raised it
    kind             TEXT NOT NULL,     -- as in alert_rule
    deliver          TEXT NOT NULL,     -- as in alert_rule
    since            INTEGER NOT NULL,  -- ms UTC: the oldest recording that counted; silence: the last one heard
    raised           INTEGER NOT NULL,  -- ms UTC
    value            REAL NOT NULL,     -- decibans, mm/s, stage 1 to 3, percent, hours
    told             REAL NOT NULL,     -- value when it was raised, or had grown by a step
    unit             TEXT NOT NULL,     -- dban | mm/s | stage | % | h
    words            TEXT NOT NULL,     -- a sentence
    seen             INTEGER NOT NULL,  -- ms UTC: when the rule last held
    ended            INTEGER,           -- ms UTC: from when it no longer did; NULL: it does
    acknowledged     INTEGER,           -- ms UTC; NULL: open. Acknowledged and ended: cleared
    acknowledged_by  TEXT NOT NULL DEFAULT '',
    acknowledged_why TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE UNIQUE INDEX alert_standing ON alert(machine, fault, at) WHERE acknowledged IS NULL OR ended IS NULL;

CREATE TABLE alert_message (            -- one mail to one address, or one run of the command
    id         INTEGER PRIMARY KEY,
    way        TEXT NOT NULL,           -- "mail planner@site.example" | command
    digest     INTEGER NOT NULL,        -- 1: several alerts together
    message_id TEXT NOT NULL,           -- of the mail, the same at every try
    made       INTEGER NOT NULL,        -- ms UTC
    attempts   INTEGER NOT NULL DEFAULT 0,
    next_try   INTEGER NOT NULL,        -- ms UTC
    held_until INTEGER NOT NULL,        -- ms UTC: a program is at it until then
    error      TEXT NOT NULL DEFAULT '',
    sent       INTEGER                  -- ms UTC; NULL: not yet
) STRICT;
CREATE INDEX alert_message_waiting ON alert_message(way) WHERE sent IS NULL;
CREATE INDEX alert_message_made ON alert_message(way, made);

CREATE TABLE alert_item (               -- an alert to be told on one way
    id      INTEGER PRIMARY KEY,
    alert   INTEGER NOT NULL REFERENCES alert,
    way     TEXT NOT NULL,
    event   TEXT NOT NULL,              -- raised | grown
    digest  INTEGER NOT NULL,           -- 1: only with others
    due     INTEGER NOT NULL,           -- ms UTC: not before
    message INTEGER REFERENCES alert_message,   -- NULL: waits
    dropped TEXT NOT NULL DEFAULT ''    -- why it is not told after all
) STRICT;
CREATE INDEX alert_item_waiting ON alert_item(way, due) WHERE message IS NULL AND dropped = '';
CREATE INDEX alert_item_of_message ON alert_item(message);

CREATE TABLE alert_setting (            -- delivery: JSON, where alerts go; never a password, only where it lies
    key   TEXT NOT NULL PRIMARY KEY,    -- delivery | looked_to (newest recording looked at) | silence (ms UTC)
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO alert_setting(key, value) SELECT 'looked_to', coalesce(max(id), 0) FROM recording;
)sql";

constexpr const char* kReExamination = R"sql(
CREATE TABLE re_examination (           -- a run of weighing again what is kept raw
    id           INTEGER PRIMARY KEY,
    engine       TEXT NOT NULL,         -- that weighed: version and checksum of the settings
    machine      TEXT NOT NULL,         -- tag; '': all
    even_current INTEGER NOT NULL,      -- 1: also what this engine had weighed before
    started      INTEGER NOT NULL,      -- ms UTC
    finished     INTEGER                -- ms UTC; NULL: not come to its end; the same one is carried on
) STRICT;

CREATE TABLE re_examined (              -- a recording weighed again in a run
    run        INTEGER NOT NULL REFERENCES re_examination,
    recording  INTEGER NOT NULL REFERENCES recording,
    old_engine TEXT NOT NULL,           -- that had weighed it before
    PRIMARY KEY (run, recording)
) STRICT, WITHOUT ROWID;

CREATE TABLE re_examined_verdict (      -- of it, where a hypothesis came out differently
    run         INTEGER NOT NULL,
    recording   INTEGER NOT NULL,
    hypothesis  INTEGER NOT NULL REFERENCES hypothesis,
    old_dban    REAL,                   -- decibans; NULL: not weighed
    new_dban    REAL,
    old_urgency TEXT NOT NULL,          -- leave | watch | plan | act; '': not named
    new_urgency TEXT NOT NULL,
    PRIMARY KEY (run, recording, hypothesis),
    FOREIGN KEY (run, recording) REFERENCES re_examined(run, recording)
) STRICT, WITHOUT ROWID;
)sql";
}  // namespace

const char* fourthStep() {
    static const std::string text = std::string(kSpectra) + kRetention + kAlerts + kReExamination;
    return text.c_str();
}

}  // namespace fettle
