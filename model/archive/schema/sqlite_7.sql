-- SPDX-License-Identifier: Apache-2.0
-- Schema 7, SQLite: what orders, parts, castings, zones and examinations hold beyond their columns,
-- and the registers of equipment, people's certificates, repairs and what else belongs to the record.

-- details: canonical bytes (CANONICAL.md of trust/) of an object, whose keys HISTORY.md lists; '{}'
-- where nothing is said.
ALTER TABLE customer_order ADD COLUMN details TEXT NOT NULL DEFAULT '{}' CHECK (details <> '');
ALTER TABLE part ADD COLUMN details TEXT NOT NULL DEFAULT '{}' CHECK (details <> '');
ALTER TABLE planned_zone ADD COLUMN details TEXT NOT NULL DEFAULT '{}' CHECK (details <> '');
ALTER TABLE casting ADD COLUMN details TEXT NOT NULL DEFAULT '{}' CHECK (details <> '');
ALTER TABLE examination ADD COLUMN details TEXT NOT NULL DEFAULT '{}' CHECK (details <> '');

-- The number of the setting check before an ultrasonic indication, as typed.
ALTER TABLE reflector ADD COLUMN after_check TEXT NOT NULL DEFAULT '';

-- Every version of every entry of the registers; its row of the history says who and when. entry:
-- what names it in its register. casting_serial and file_sha256 repeat what content holds; NULL: it
-- holds none. content: canonical bytes of its fields.
CREATE TABLE register_entry (
    history_sequence INTEGER PRIMARY KEY REFERENCES history (sequence),
    register TEXT NOT NULL CHECK (register <> ''),
    entry TEXT NOT NULL CHECK (entry <> ''),
    version INTEGER NOT NULL CHECK (version >= 1),
    casting_serial TEXT REFERENCES casting (serial),
    file_sha256 TEXT CHECK (length(file_sha256) = 64),
    content TEXT NOT NULL,
    UNIQUE (register, entry, version)
) STRICT;
CREATE INDEX register_entry_by_casting ON register_entry (casting_serial)
    WHERE casting_serial IS NOT NULL;

CREATE TRIGGER register_entry_is_kept_on_insert BEFORE INSERT ON register_entry
WHEN EXISTS (SELECT 1 FROM register_entry WHERE history_sequence = NEW.history_sequence)
     OR NEW.version <> 1 + (SELECT coalesce(max(version), 0) FROM register_entry
                            WHERE register = NEW.register AND entry = NEW.entry)
BEGIN SELECT RAISE(ABORT, 'an entry is added version by version'); END;
CREATE TRIGGER register_entry_never_changes BEFORE UPDATE ON register_entry
BEGIN SELECT RAISE(ABORT, 'a version of an entry never changes'); END;
CREATE TRIGGER register_entry_stays BEFORE DELETE ON register_entry
BEGIN SELECT RAISE(ABORT, 'a version of an entry never changes'); END;

-- A casting that was returned, and so has no certificate, is disposed of as certificates are.
DROP TRIGGER disposal_is_due;
CREATE TRIGGER disposal_is_due BEFORE INSERT ON disposal
WHEN NOT EXISTS (SELECT 1 FROM retention
                 JOIN history ON history.sequence = NEW.history_sequence
                 WHERE retention.order_number IN
                       (SELECT order_number FROM certificate WHERE number = NEW.number
                        UNION ALL
                        SELECT casting.order_number FROM presentation_return
                        JOIN presentation ON presentation.number = presentation_return.number
                        JOIN casting ON casting.serial = presentation.casting_serial
                        WHERE presentation_return.number = NEW.number)
                   AND retention.hold IS NULL
                   AND history.action = 'certificate disposed'
                   AND history.subject = CAST(NEW.number AS TEXT)
                   AND substr(history.happened_at, 1, 10) > retention.keep_until)
BEGIN SELECT RAISE(ABORT, 'the certificate is to be kept'); END;
DROP TRIGGER presentation_return_stays;
CREATE TRIGGER presentation_return_stays BEFORE DELETE ON presentation_return
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.number)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
