-- SPDX-License-Identifier: Apache-2.0
-- Schema 1, SQLite. Lengths are whole nanometres, areas whole millionths of a square millimetre,
-- angles whole millionths of a degree; times are UTC, 2026-11-25T09:30:00Z.
--
-- A BEFORE INSERT trigger guards each table whose rows never change: an INSERT OR REPLACE would
-- delete the old row without firing its DELETE trigger.

CREATE TABLE archive (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    kind TEXT NOT NULL CHECK (kind IN ('demonstration', 'working')),
    created_at TEXT NOT NULL
) STRICT;

-- hash: SHA-256 over the row before's hash (row 1: 32 zero bytes) followed by bytes. The columns
-- from happened_at to subject repeat what stands in bytes, for reading and searching.
CREATE TABLE history (
    sequence INTEGER PRIMARY KEY CHECK (sequence >= 1),
    happened_at TEXT NOT NULL,
    person TEXT NOT NULL CHECK (person <> ''),
    action TEXT NOT NULL CHECK (action <> ''),
    subject TEXT NOT NULL,
    bytes BLOB NOT NULL,
    hash BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

CREATE TABLE customer_order (
    number TEXT NOT NULL PRIMARY KEY CHECK (number <> ''),
    version INTEGER NOT NULL CHECK (version >= 1),
    customer TEXT NOT NULL,
    customer_reference TEXT NOT NULL,
    certificate_type TEXT NOT NULL CHECK (certificate_type IN ('2.2', '3.1', '3.2')),
    language TEXT NOT NULL,
    decision_rule TEXT NOT NULL,
    rounding_rule TEXT NOT NULL,
    remarks TEXT NOT NULL
) STRICT;

CREATE TABLE order_forbidden_kind (
    order_number TEXT NOT NULL REFERENCES customer_order (number),
    position INTEGER NOT NULL CHECK (position >= 1),
    kind TEXT NOT NULL CHECK (kind <> ''),
    PRIMARY KEY (order_number, position),
    UNIQUE (order_number, kind)
) STRICT, WITHOUT ROWID;

CREATE TABLE part (
    number TEXT NOT NULL PRIMARY KEY CHECK (number <> ''),
    version INTEGER NOT NULL CHECK (version >= 1),
    description TEXT NOT NULL,
    drawing TEXT NOT NULL,
    drawing_revision TEXT NOT NULL,
    material TEXT NOT NULL CHECK (material <> ''),
    material_grade TEXT NOT NULL
) STRICT;

CREATE TABLE zone_plan (
    part_number TEXT NOT NULL REFERENCES part (number),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    PRIMARY KEY (part_number, revision)
) STRICT, WITHOUT ROWID;

CREATE TABLE planned_zone (
    part_number TEXT NOT NULL,
    revision INTEGER NOT NULL,
    position INTEGER NOT NULL CHECK (position >= 1),
    name TEXT NOT NULL CHECK (name <> ''),
    description TEXT NOT NULL,
    width_nm INTEGER NOT NULL CHECK (width_nm > 0),
    height_nm INTEGER NOT NULL CHECK (height_nm > 0),
    thickness_nm INTEGER NOT NULL CHECK (thickness_nm > 0),
    surface TEXT CHECK (surface <> ''),
    surface_x_nm INTEGER CHECK ((surface_x_nm IS NULL) = (surface IS NULL)),
    surface_y_nm INTEGER CHECK ((surface_y_nm IS NULL) = (surface IS NULL)),
    surface_angle_millionth_deg INTEGER
        CHECK ((surface_angle_millionth_deg IS NULL) = (surface IS NULL)),
    surface_width_nm INTEGER
        CHECK ((surface_width_nm IS NULL) = (surface IS NULL) AND surface_width_nm > 0),
    surface_height_nm INTEGER
        CHECK ((surface_height_nm IS NULL) = (surface IS NULL) AND surface_height_nm > 0),
    surface_period_nm INTEGER
        CHECK (surface_period_nm IS NULL OR (surface IS NOT NULL AND surface_period_nm > 0)),
    PRIMARY KEY (part_number, revision, position),
    UNIQUE (part_number, revision, name),
    FOREIGN KEY (part_number, revision) REFERENCES zone_plan (part_number, revision)
) STRICT, WITHOUT ROWID;

CREATE TABLE required_test (
    part_number TEXT NOT NULL,
    revision INTEGER NOT NULL,
    zone_position INTEGER NOT NULL,
    position INTEGER NOT NULL CHECK (position >= 1),
    method TEXT NOT NULL CHECK (method <> ''),
    stage TEXT NOT NULL CHECK (stage <> ''),
    limit_table TEXT NOT NULL,
    PRIMARY KEY (part_number, revision, zone_position, position),
    FOREIGN KEY (part_number, revision, zone_position)
        REFERENCES planned_zone (part_number, revision, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE required_level (
    part_number TEXT NOT NULL,
    revision INTEGER NOT NULL,
    zone_position INTEGER NOT NULL,
    test_position INTEGER NOT NULL,
    level_key TEXT NOT NULL,
    level TEXT NOT NULL,
    PRIMARY KEY (part_number, revision, zone_position, test_position, level_key),
    FOREIGN KEY (part_number, revision, zone_position, test_position)
        REFERENCES required_test (part_number, revision, zone_position, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE casting (
    serial TEXT NOT NULL PRIMARY KEY CHECK (serial <> ''),
    version INTEGER NOT NULL CHECK (version >= 1),
    heat TEXT NOT NULL,
    order_number TEXT NOT NULL REFERENCES customer_order (number),
    part_number TEXT NOT NULL,
    zone_plan_revision INTEGER NOT NULL,
    FOREIGN KEY (part_number, zone_plan_revision) REFERENCES zone_plan (part_number, revision)
) STRICT;
CREATE INDEX casting_by_order ON casting (order_number);
CREATE INDEX casting_by_part ON casting (part_number, zone_plan_revision);

-- A draft at the bench. thickness_nm is 0 until it is typed; judging refuses it then.
CREATE TABLE examination (
    id INTEGER PRIMARY KEY,
    version INTEGER NOT NULL CHECK (version >= 1),
    casting_serial TEXT NOT NULL REFERENCES casting (serial),
    zone TEXT NOT NULL,
    method TEXT NOT NULL CHECK (method <> ''),
    stage TEXT NOT NULL CHECK (stage <> ''),
    repair_cycle INTEGER NOT NULL CHECK (repair_cycle >= 0),
    repeat_number INTEGER NOT NULL CHECK (repeat_number >= 0),
    thickness_nm INTEGER NOT NULL CHECK (thickness_nm >= 0),
    surface TEXT CHECK (surface <> ''),
    surface_x_nm INTEGER CHECK ((surface_x_nm IS NULL) = (surface IS NULL)),
    surface_y_nm INTEGER CHECK ((surface_y_nm IS NULL) = (surface IS NULL)),
    surface_angle_millionth_deg INTEGER
        CHECK ((surface_angle_millionth_deg IS NULL) = (surface IS NULL)),
    surface_width_nm INTEGER CHECK ((surface_width_nm IS NULL) = (surface IS NULL)),
    surface_height_nm INTEGER CHECK ((surface_height_nm IS NULL) = (surface IS NULL)),
    surface_period_nm INTEGER CHECK (surface_period_nm IS NULL OR surface IS NOT NULL),
    limit_table TEXT NOT NULL,
    no_indications INTEGER NOT NULL CHECK (no_indications IN (0, 1)),
    examined_by TEXT NOT NULL,
    examined_on TEXT NOT NULL,
    written_procedure TEXT NOT NULL,
    remarks TEXT NOT NULL,
    saved_at TEXT NOT NULL,
    saved_by TEXT NOT NULL,
    UNIQUE (casting_serial, zone, method, stage, repair_cycle, repeat_number)
) STRICT;

CREATE TABLE examination_level (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    level_key TEXT NOT NULL,
    level TEXT NOT NULL,
    PRIMARY KEY (examination_id, level_key)
) STRICT, WITHOUT ROWID;

CREATE TABLE examination_forbidden_kind (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    kind TEXT NOT NULL CHECK (kind <> ''),
    PRIMARY KEY (examination_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE not_examined (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    area_millionth_mm2 INTEGER NOT NULL CHECK (area_millionth_mm2 >= 0),
    reason TEXT NOT NULL,
    agreed TEXT NOT NULL,
    PRIMARY KEY (examination_id, position)
) STRICT, WITHOUT ROWID;

-- Each field as typed, in unit where it is a length; beside it the exact value, NULL where the
-- text is empty or no number.
CREATE TABLE indication (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    id TEXT NOT NULL,
    unit TEXT NOT NULL CHECK (unit IN ('mm', 'in')),
    x TEXT NOT NULL,
    x_nm INTEGER,
    y TEXT NOT NULL,
    y_nm INTEGER,
    length TEXT NOT NULL,
    length_nm INTEGER,
    width TEXT NOT NULL,
    width_nm INTEGER,
    removed TEXT NOT NULL,
    removed_nm INTEGER,
    angle TEXT NOT NULL,
    angle_millionth_deg INTEGER,
    area TEXT NOT NULL,
    area_millionth_mm2 INTEGER,
    kind TEXT NOT NULL,
    stated TEXT NOT NULL,
    relevance TEXT NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (examination_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE limit_table (
    id TEXT NOT NULL CHECK (id <> ''),
    revision INTEGER NOT NULL CHECK (revision >= 1),
    sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
    name TEXT NOT NULL,
    content TEXT NOT NULL,
    PRIMARY KEY (id, revision)
) STRICT;

-- A QA manager's signed statement about a limit table; the signing act is its history row.
CREATE TABLE attestation (
    history_sequence INTEGER PRIMARY KEY REFERENCES history (sequence),
    limit_table_sha256 TEXT NOT NULL CHECK (length(limit_table_sha256) = 64)
) STRICT;

CREATE TABLE certificate_number (
    number INTEGER PRIMARY KEY CHECK (number >= 1)
) STRICT;

CREATE TABLE certificate (
    number INTEGER PRIMARY KEY REFERENCES certificate_number (number),
    casting_serial TEXT NOT NULL REFERENCES casting (serial),
    heat TEXT NOT NULL,
    part_number TEXT NOT NULL,
    order_number TEXT NOT NULL,
    customer TEXT NOT NULL,
    customer_reference TEXT NOT NULL,
    certificate_type TEXT NOT NULL CHECK (certificate_type <> ''),
    language TEXT NOT NULL,
    verdict TEXT NOT NULL CHECK (verdict IN ('acceptable', 'not acceptable', 'not judged')),
    printed_head TEXT,
    supersedes INTEGER REFERENCES certificate (number),
    issued_at TEXT NOT NULL,
    issued_by TEXT NOT NULL,
    file_sha256 TEXT NOT NULL CHECK (length(file_sha256) = 64),
    file_bytes INTEGER NOT NULL CHECK (file_bytes > 0)
) STRICT;

CREATE TABLE certificate_table (
    certificate INTEGER NOT NULL REFERENCES certificate (number),
    table_sha256 TEXT NOT NULL REFERENCES limit_table (sha256),
    PRIMARY KEY (certificate, table_sha256)
) STRICT, WITHOUT ROWID;

CREATE INDEX certificate_by_casting ON certificate (casting_serial);
CREATE INDEX certificate_by_heat ON certificate (heat);
CREATE INDEX certificate_by_part ON certificate (part_number);
CREATE INDEX certificate_by_order ON certificate (order_number);
CREATE INDEX certificate_by_customer ON certificate (customer);
CREATE INDEX certificate_by_issue ON certificate (issued_at);

CREATE TRIGGER archive_stays_one BEFORE INSERT ON archive
WHEN EXISTS (SELECT 1 FROM archive)
BEGIN SELECT RAISE(ABORT, 'an archive keeps the kind it was made with'); END;
CREATE TRIGGER archive_keeps_kind BEFORE UPDATE ON archive
BEGIN SELECT RAISE(ABORT, 'an archive keeps the kind it was made with'); END;
CREATE TRIGGER archive_stays BEFORE DELETE ON archive
BEGIN SELECT RAISE(ABORT, 'an archive keeps the kind it was made with'); END;

CREATE TRIGGER history_only_grows BEFORE INSERT ON history
WHEN NEW.sequence IS NOT (SELECT coalesce(max(sequence), 0) + 1 FROM history)
BEGIN SELECT RAISE(ABORT, 'the history only grows, row by row'); END;
CREATE TRIGGER history_never_changes BEFORE UPDATE ON history
BEGIN SELECT RAISE(ABORT, 'the history never changes'); END;
CREATE TRIGGER history_never_shrinks BEFORE DELETE ON history
BEGIN SELECT RAISE(ABORT, 'the history never changes'); END;

CREATE TRIGGER zone_plan_is_kept_on_insert BEFORE INSERT ON zone_plan
WHEN EXISTS (SELECT 1 FROM zone_plan
             WHERE part_number = NEW.part_number AND revision = NEW.revision)
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER zone_plan_never_changes BEFORE UPDATE ON zone_plan
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER zone_plan_stays BEFORE DELETE ON zone_plan
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;

CREATE TRIGGER planned_zone_is_kept_on_insert BEFORE INSERT ON planned_zone
WHEN EXISTS (SELECT 1 FROM planned_zone
             WHERE part_number = NEW.part_number AND revision = NEW.revision
               AND (position = NEW.position OR name = NEW.name))
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER planned_zone_never_changes BEFORE UPDATE ON planned_zone
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER planned_zone_stays BEFORE DELETE ON planned_zone
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;

CREATE TRIGGER required_test_is_kept_on_insert BEFORE INSERT ON required_test
WHEN EXISTS (SELECT 1 FROM required_test
             WHERE part_number = NEW.part_number AND revision = NEW.revision
               AND zone_position = NEW.zone_position AND position = NEW.position)
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER required_test_never_changes BEFORE UPDATE ON required_test
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER required_test_stays BEFORE DELETE ON required_test
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;

CREATE TRIGGER required_level_is_kept_on_insert BEFORE INSERT ON required_level
WHEN EXISTS (SELECT 1 FROM required_level
             WHERE part_number = NEW.part_number AND revision = NEW.revision
               AND zone_position = NEW.zone_position AND test_position = NEW.test_position
               AND level_key = NEW.level_key)
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER required_level_never_changes BEFORE UPDATE ON required_level
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;
CREATE TRIGGER required_level_stays BEFORE DELETE ON required_level
BEGIN SELECT RAISE(ABORT, 'a revision of a zone plan never changes'); END;

CREATE TRIGGER limit_table_is_kept_on_insert BEFORE INSERT ON limit_table
WHEN EXISTS (SELECT 1 FROM limit_table
             WHERE (id = NEW.id AND revision = NEW.revision) OR sha256 = NEW.sha256)
BEGIN SELECT RAISE(ABORT, 'a revision of a limit table never changes'); END;
CREATE TRIGGER limit_table_never_changes BEFORE UPDATE ON limit_table
BEGIN SELECT RAISE(ABORT, 'a revision of a limit table never changes'); END;
CREATE TRIGGER limit_table_stays BEFORE DELETE ON limit_table
BEGIN SELECT RAISE(ABORT, 'a revision of a limit table never changes'); END;

CREATE TRIGGER attestation_is_kept_on_insert BEFORE INSERT ON attestation
WHEN EXISTS (SELECT 1 FROM attestation WHERE history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'an attestation never changes'); END;
CREATE TRIGGER attestation_never_changes BEFORE UPDATE ON attestation
BEGIN SELECT RAISE(ABORT, 'an attestation never changes'); END;
CREATE TRIGGER attestation_stays BEFORE DELETE ON attestation
BEGIN SELECT RAISE(ABORT, 'an attestation never changes'); END;

CREATE TRIGGER certificate_number_only_grows BEFORE INSERT ON certificate_number
WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM certificate_number)
BEGIN SELECT RAISE(ABORT, 'certificate numbers are given out one after the other'); END;
CREATE TRIGGER certificate_number_never_changes BEFORE UPDATE ON certificate_number
BEGIN SELECT RAISE(ABORT, 'a certificate number never changes'); END;
CREATE TRIGGER certificate_number_stays BEFORE DELETE ON certificate_number
BEGIN SELECT RAISE(ABORT, 'a certificate number never changes'); END;

CREATE TRIGGER certificate_is_kept_on_insert BEFORE INSERT ON certificate
WHEN EXISTS (SELECT 1 FROM certificate WHERE number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
CREATE TRIGGER certificate_never_changes BEFORE UPDATE ON certificate
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
CREATE TRIGGER certificate_stays BEFORE DELETE ON certificate
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;

CREATE TRIGGER certificate_table_is_kept_on_insert BEFORE INSERT ON certificate_table
WHEN EXISTS (SELECT 1 FROM certificate_table
             WHERE certificate = NEW.certificate AND table_sha256 = NEW.table_sha256)
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
CREATE TRIGGER certificate_table_never_changes BEFORE UPDATE ON certificate_table
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
CREATE TRIGGER certificate_table_stays BEFORE DELETE ON certificate_table
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
