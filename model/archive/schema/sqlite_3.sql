-- SPDX-License-Identifier: Apache-2.0
-- Schema 3, SQLite: finding certificates by words and by what they state.
--
-- certificate_words is an index over the table certificate and keeps no text of its own; nothing
-- in it is evidence, and it can be made anew at any time. Prefixes of up to ten characters are
-- indexed, so that finding while a word is being typed costs no more than finding the whole word.
-- The verdict is in it so that a rare verdict beside a common word is found without reading all
-- certificates that have the word.
CREATE VIRTUAL TABLE certificate_words USING fts5 (
    casting_serial, heat, part_number, order_number, customer, customer_reference,
    certificate_type, verdict,
    content = 'certificate', content_rowid = 'number',
    tokenize = 'unicode61 remove_diacritics 2',
    prefix = '1 2 3 4 5 6 7 8 9 10'
);
INSERT INTO certificate_words (certificate_words) VALUES ('rebuild');

CREATE TRIGGER certificate_words_follow AFTER INSERT ON certificate
BEGIN
    INSERT INTO certificate_words (rowid, casting_serial, heat, part_number, order_number, customer,
                                   customer_reference, certificate_type, verdict)
    VALUES (NEW.number, NEW.casting_serial, NEW.heat, NEW.part_number, NEW.order_number,
            NEW.customer, NEW.customer_reference, NEW.certificate_type, NEW.verdict);
END;

-- Certificates are listed by number. Numbers rise with time almost always, so that the months of a
-- range of dates give the range of numbers to look through.
DROP INDEX certificate_by_issue;
CREATE INDEX certificate_by_month ON certificate (substr(issued_at, 1, 7), number);
CREATE INDEX certificate_by_verdict ON certificate (verdict);
CREATE INDEX certificate_by_superseded ON certificate (supersedes) WHERE supersedes IS NOT NULL;
