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

-- A QA manager took the attestation of a limit table back.
CREATE TABLE attestation_withdrawal (
    attestation INTEGER PRIMARY KEY REFERENCES attestation (history_sequence),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;

-- series: every serial number that a certificate stands for, parted by commas, as frozen at its
-- issue; '': that of the casting alone.
ALTER TABLE certificate ADD COLUMN series TEXT NOT NULL DEFAULT '';
CREATE TABLE certificate_serial (
    serial TEXT NOT NULL CHECK (serial <> ''),
    certificate INTEGER NOT NULL REFERENCES certificate (number) ON DELETE CASCADE,
    PRIMARY KEY (serial, certificate)
) STRICT, WITHOUT ROWID;

-- The index of the words, with the series.
DROP TRIGGER certificate_words_follow;
DROP TRIGGER certificate_words_forget;
DROP TABLE certificate_words;
CREATE VIRTUAL TABLE certificate_words USING fts5 (
    casting_serial, heat, part_number, order_number, customer, customer_reference,
    certificate_type, verdict, series,
    content = 'certificate', content_rowid = 'number',
    tokenize = 'unicode61 remove_diacritics 2',
    prefix = '1 2 3 4 5 6 7 8 9 10'
);
INSERT INTO certificate_words (certificate_words) VALUES ('rebuild');
CREATE TRIGGER certificate_words_follow AFTER INSERT ON certificate
BEGIN
    INSERT INTO certificate_words (rowid, casting_serial, heat, part_number, order_number, customer,
                                   customer_reference, certificate_type, verdict, series)
    VALUES (NEW.number, NEW.casting_serial, NEW.heat, NEW.part_number, NEW.order_number,
            NEW.customer, NEW.customer_reference, NEW.certificate_type, NEW.verdict, NEW.series);
END;
CREATE TRIGGER certificate_words_forget AFTER DELETE ON certificate
BEGIN
    INSERT INTO certificate_words (certificate_words, rowid, casting_serial, heat, part_number,
                                   order_number, customer, customer_reference, certificate_type,
                                   verdict, series)
    VALUES ('delete', OLD.number, OLD.casting_serial, OLD.heat, OLD.part_number, OLD.order_number,
            OLD.customer, OLD.customer_reference, OLD.certificate_type, OLD.verdict, OLD.series);
END;

CREATE TRIGGER attestation_withdrawal_is_kept_on_insert BEFORE INSERT ON attestation_withdrawal
WHEN EXISTS (SELECT 1 FROM attestation_withdrawal
             WHERE attestation = NEW.attestation OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER attestation_withdrawal_never_changes BEFORE UPDATE ON attestation_withdrawal
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
CREATE TRIGGER attestation_withdrawal_stays BEFORE DELETE ON attestation_withdrawal
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;

CREATE TRIGGER certificate_serial_is_kept_on_insert BEFORE INSERT ON certificate_serial
WHEN EXISTS (SELECT 1 FROM certificate_serial
             WHERE serial = NEW.serial AND certificate = NEW.certificate)
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
CREATE TRIGGER certificate_serial_never_changes BEFORE UPDATE ON certificate_serial
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
CREATE TRIGGER certificate_serial_stays BEFORE DELETE ON certificate_serial
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.certificate)
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;

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
