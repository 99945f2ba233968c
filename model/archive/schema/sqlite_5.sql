-- SPDX-License-Identifier: Apache-2.0
-- Schema 5, SQLite: how long an order's certificates are kept, and their disposal.

-- keep_until: 2036-12-31, NULL: kept for ever. hold: the reason of a legal hold, NULL: none.
CREATE TABLE retention (
    order_number TEXT NOT NULL PRIMARY KEY REFERENCES customer_order (number),
    version INTEGER NOT NULL CHECK (version >= 1),
    keep_until TEXT CHECK (keep_until <> ''),
    hold TEXT CHECK (hold <> '')
) STRICT;

-- A certificate that was taken out; the signed row of the history says what it was.
CREATE TABLE disposal (
    number INTEGER PRIMARY KEY REFERENCES certificate_number (number),
    history_sequence INTEGER NOT NULL UNIQUE REFERENCES history (sequence),
    person TEXT NOT NULL REFERENCES person (id),
    reason TEXT NOT NULL CHECK (reason <> '')
) STRICT;

-- A record whose content went with it; the record itself stays, as it is what keeps its
-- examination signed.
CREATE TABLE disposed_record (
    record_id INTEGER PRIMARY KEY REFERENCES record (id),
    number INTEGER NOT NULL REFERENCES disposal (number)
) STRICT;

CREATE TRIGGER disposal_is_kept_on_insert BEFORE INSERT ON disposal
WHEN EXISTS (SELECT 1 FROM disposal
             WHERE number = NEW.number OR history_sequence = NEW.history_sequence)
BEGIN SELECT RAISE(ABORT, 'a disposal never changes'); END;
CREATE TRIGGER disposal_never_changes BEFORE UPDATE ON disposal
BEGIN SELECT RAISE(ABORT, 'a disposal never changes'); END;
CREATE TRIGGER disposal_stays BEFORE DELETE ON disposal
BEGIN SELECT RAISE(ABORT, 'a disposal never changes'); END;
-- Past its day, and not on hold: whatever program asks. A certificate without an order's
-- retention is kept for ever.
CREATE TRIGGER disposal_is_due BEFORE INSERT ON disposal
WHEN NOT EXISTS (SELECT 1 FROM certificate
                 JOIN retention ON retention.order_number = certificate.order_number
                 JOIN history ON history.sequence = NEW.history_sequence
                 WHERE certificate.number = NEW.number AND retention.hold IS NULL
                   AND history.action = 'certificate disposed'
                   AND history.subject = CAST(NEW.number AS TEXT)
                   AND substr(history.happened_at, 1, 10) > retention.keep_until)
BEGIN SELECT RAISE(ABORT, 'the certificate is to be kept'); END;

CREATE TRIGGER disposed_record_is_kept_on_insert BEFORE INSERT ON disposed_record
WHEN EXISTS (SELECT 1 FROM disposed_record WHERE record_id = NEW.record_id)
BEGIN SELECT RAISE(ABORT, 'a disposal never changes'); END;
CREATE TRIGGER disposed_record_never_changes BEFORE UPDATE ON disposed_record
BEGIN SELECT RAISE(ABORT, 'a disposal never changes'); END;
CREATE TRIGGER disposed_record_stays BEFORE DELETE ON disposed_record
BEGIN SELECT RAISE(ABORT, 'a disposal never changes'); END;

CREATE TRIGGER retention_is_kept_on_insert BEFORE INSERT ON retention
WHEN NEW.version <> 1
     OR EXISTS (SELECT 1 FROM retention WHERE order_number = NEW.order_number)
BEGIN SELECT RAISE(ABORT, 'a retention is changed version by version'); END;
CREATE TRIGGER retention_rises BEFORE UPDATE ON retention
WHEN NEW.version <> OLD.version + 1 OR NEW.order_number <> OLD.order_number
BEGIN SELECT RAISE(ABORT, 'a retention is changed version by version'); END;
CREATE TRIGGER retention_stays BEFORE DELETE ON retention
BEGIN SELECT RAISE(ABORT, 'a retention stays'); END;

-- What a disposal lets go.
DROP TRIGGER certificate_stays;
CREATE TRIGGER certificate_stays BEFORE DELETE ON certificate
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.number)
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
DROP TRIGGER certificate_table_stays;
CREATE TRIGGER certificate_table_stays BEFORE DELETE ON certificate_table
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.certificate)
BEGIN SELECT RAISE(ABORT, 'a certificate never changes'); END;
DROP TRIGGER certificate_release_stays;
CREATE TRIGGER certificate_release_stays BEFORE DELETE ON certificate_release
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.number)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
DROP TRIGGER certificate_withdrawal_stays;
CREATE TRIGGER certificate_withdrawal_stays BEFORE DELETE ON certificate_withdrawal
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.number)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
DROP TRIGGER endorsement_stays;
CREATE TRIGGER endorsement_stays BEFORE DELETE ON endorsement
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.number)
BEGIN SELECT RAISE(ABORT, 'what was signed never changes'); END;
DROP TRIGGER presentation_stays;
CREATE TRIGGER presentation_stays BEFORE DELETE ON presentation
WHEN NOT EXISTS (SELECT 1 FROM disposal WHERE number = OLD.number)
BEGIN SELECT RAISE(ABORT, 'what was presented never changes'); END;
DROP TRIGGER record_never_changes;
CREATE TRIGGER record_never_changes BEFORE UPDATE ON record
WHEN NOT EXISTS (SELECT 1 FROM disposed_record WHERE record_id = OLD.id)
     OR NEW.content <> x'' OR NEW.id <> OLD.id OR NEW.examination_id <> OLD.examination_id
     OR NEW.revision <> OLD.revision OR NEW.casting_serial <> OLD.casting_serial
     OR NEW.person <> OLD.person OR NEW.word <> OLD.word OR NEW.rejection IS NOT OLD.rejection
BEGIN SELECT RAISE(ABORT, 'a record never changes'); END;

-- What is disposed of is not found by words either.
CREATE TRIGGER certificate_words_forget AFTER DELETE ON certificate
BEGIN
    INSERT INTO certificate_words (certificate_words, rowid, casting_serial, heat, part_number,
                                   order_number, customer, customer_reference, certificate_type,
                                   verdict)
    VALUES ('delete', OLD.number, OLD.casting_serial, OLD.heat, OLD.part_number, OLD.order_number,
            OLD.customer, OLD.customer_reference, OLD.certificate_type, OLD.verdict);
END;
