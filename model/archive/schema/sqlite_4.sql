-- SPDX-License-Identifier: Apache-2.0
-- Schema 4, SQLite: signed records, and what is presented, released, returned and withdrawn. Each
-- row belongs to a row of the history that a person signed (history_sequence; for a record, its
-- id), which says who and when; person: that person's id.

-- A signed examination. content: canonical bytes, see HISTORY.md. rejection: its reason.
CREATE TABLE record (
    id INTEGER PRIMARY KEY REFERENCES history (sequence),
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    casting_serial TEXT NOT NULL REFERENCES casting (serial),
    person TEXT NOT NULL REFERENCES person (id),
    word TEXT NOT NULL CHECK (word IN ('acceptable', 'not acceptable', 'not judged')),
    rejection TEXT
        CHECK (rejection IS NULL OR (rejection <> '' AND word = 'not acceptable')),
    content BLOB NOT NULL,
    UNIQUE (examination_id, revision)
) STRICT;
CREATE INDEX record_by_casting ON record (casting_serial);

-- A Level 3's statement why an examination was invalid.
CREATE TABLE record_invalidation (
    record_id INTEGER PRIMARY KEY REFERENCES record (id),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;

-- A QA manager gave the casting back: the record no longer stands. Many to one row of the history.
CREATE TABLE record_return (
    record_id INTEGER PRIMARY KEY REFERENCES record (id),
    history_sequence INTEGER NOT NULL REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;

-- A casting presented for release. content: canonical bytes, see HISTORY.md; sheet and verdict:
-- fettlemark-sheet/1 and fettlemark-verdict/1 as they were judged.
CREATE TABLE presentation (
    number INTEGER PRIMARY KEY REFERENCES certificate_number (number),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    casting_serial TEXT NOT NULL REFERENCES casting (serial),
    person TEXT NOT NULL REFERENCES person (id),
    file_sha256 TEXT NOT NULL CHECK (length(file_sha256) = 64),
    file_bytes INTEGER NOT NULL CHECK (file_bytes > 0),
    content BLOB NOT NULL,
    sheet TEXT NOT NULL,
    verdict TEXT NOT NULL
) STRICT;
CREATE INDEX presentation_by_casting ON presentation (casting_serial);

-- What waits: presented, and neither returned nor released. Follows from the other tables.
CREATE TABLE release_queue (
    number INTEGER PRIMARY KEY REFERENCES presentation (number)
) STRICT;

CREATE TABLE presentation_return (
    number INTEGER PRIMARY KEY REFERENCES presentation (number),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;

-- The third party's signature (EN 10204:2004, type 3.2).
CREATE TABLE endorsement (
    number INTEGER PRIMARY KEY REFERENCES presentation (number),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    file_sha256 TEXT NOT NULL CHECK (length(file_sha256) = 64),
    file_bytes INTEGER NOT NULL CHECK (file_bytes > 0)
) STRICT;

-- The QA manager's act that made a certificate; there is none of one made by schema 1.
CREATE TABLE certificate_release (
    number INTEGER PRIMARY KEY REFERENCES certificate (number),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id)
) STRICT;

CREATE TABLE certificate_withdrawal (
    number INTEGER PRIMARY KEY REFERENCES certificate (number),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;


CREATE TRIGGER record_is_kept_on_insert BEFORE INSERT ON record
WHEN EXISTS (SELECT 1 FROM record WHERE id = NEW.id
        OR (examination_id = NEW.examination_id AND revision = NEW.revision))
BEGIN SELECT RAISE(ABORT, 'a record never changes'); END;
CREATE TRIGGER record_never_changes BEFORE UPDATE ON record
BEGIN SELECT RAISE(ABORT, 'a record never changes'); END;
CREATE TRIGGER record_stays BEFORE DELETE ON record
BEGIN SELECT RAISE(ABORT, 'a record never changes'); END;

CREATE TRIGGER record_invalidation_is_kept_on_insert BEFORE INSERT ON record_invalidation
WHEN EXISTS (SELECT 1 FROM record_invalidation WHERE record_id = NEW.record_id OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER record_invalidation_never_changes BEFORE UPDATE ON record_invalidation
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER record_invalidation_stays BEFORE DELETE ON record_invalidation
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;

CREATE TRIGGER record_return_is_kept_on_insert BEFORE INSERT ON record_return
WHEN EXISTS (SELECT 1 FROM record_return WHERE record_id = NEW.record_id)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER record_return_never_changes BEFORE UPDATE ON record_return
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER record_return_stays BEFORE DELETE ON record_return
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;

CREATE TRIGGER presentation_is_kept_on_insert BEFORE INSERT ON presentation
WHEN EXISTS (SELECT 1 FROM presentation WHERE number = NEW.number OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was presented never changes'); END;
CREATE TRIGGER presentation_never_changes BEFORE UPDATE ON presentation
BEGIN SELECT RAISE(ABORT, 'what was presented never changes'); END;
CREATE TRIGGER presentation_stays BEFORE DELETE ON presentation
BEGIN SELECT RAISE(ABORT, 'what was presented never changes'); END;

CREATE TRIGGER presentation_return_is_kept_on_insert BEFORE INSERT ON presentation_return
WHEN EXISTS (SELECT 1 FROM presentation_return WHERE number = NEW.number OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER presentation_return_never_changes BEFORE UPDATE ON presentation_return
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER presentation_return_stays BEFORE DELETE ON presentation_return
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;

CREATE TRIGGER endorsement_is_kept_on_insert BEFORE INSERT ON endorsement
WHEN EXISTS (SELECT 1 FROM endorsement WHERE number = NEW.number OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER endorsement_never_changes BEFORE UPDATE ON endorsement
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER endorsement_stays BEFORE DELETE ON endorsement
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;

CREATE TRIGGER certificate_release_is_kept_on_insert BEFORE INSERT ON certificate_release
WHEN EXISTS (SELECT 1 FROM certificate_release WHERE number = NEW.number OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER certificate_release_never_changes BEFORE UPDATE ON certificate_release
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER certificate_release_stays BEFORE DELETE ON certificate_release
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;

CREATE TRIGGER certificate_withdrawal_is_kept_on_insert BEFORE INSERT ON certificate_withdrawal
WHEN EXISTS (SELECT 1 FROM certificate_withdrawal WHERE number = NEW.number OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER certificate_withdrawal_never_changes BEFORE UPDATE ON certificate_withdrawal
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER certificate_withdrawal_stays BEFORE DELETE ON certificate_withdrawal
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
