-- SPDX-License-Identifier: Apache-2.0
-- Schema 2, SQLite: people, their identities, and what they and the archive sign.

-- The archive's own key; its private half is never in the database. A new one takes over where the
-- file of the one before was lost. public_key: DER, SubjectPublicKeyInfo (RFC 5280). sealed_from:
-- the first row of the history that it seals.
CREATE TABLE archive_key (
    number INTEGER PRIMARY KEY CHECK (number >= 1),
    public_key BLOB NOT NULL,
    sealed_from INTEGER NOT NULL UNIQUE CHECK (sealed_from >= 1)
) STRICT;

-- signature: ECDSA with P-256 over the row's hash, DER.
CREATE TABLE history_seal (
    sequence INTEGER PRIMARY KEY REFERENCES history (sequence),
    signature BLOB NOT NULL CHECK (length(signature) BETWEEN 8 AND 72)
) STRICT;

-- An id is never given to a second person; of one name there is one person at a time.
CREATE TABLE person (
    id TEXT NOT NULL PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 64),
    version INTEGER NOT NULL CHECK (version >= 1),
    name TEXT NOT NULL UNIQUE CHECK (name <> ''),
    manufacturing INTEGER NOT NULL CHECK (manufacturing IN (0, 1)),
    body TEXT NOT NULL,
    active INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;

CREATE TABLE person_role (
    person_id TEXT NOT NULL REFERENCES person (id),
    role TEXT NOT NULL CHECK (role <> ''),
    PRIMARY KEY (person_id, role)
) STRICT, WITHOUT ROWID;

-- A level of qualification, 1 to 3 (ISO 9712).
CREATE TABLE person_level (
    person_id TEXT NOT NULL REFERENCES person (id),
    method TEXT NOT NULL CHECK (method <> ''),
    level INTEGER NOT NULL CHECK (level BETWEEN 1 AND 3),
    PRIMARY KEY (person_id, method)
) STRICT, WITHOUT ROWID;

-- kind: 'person', 'own authority', which issues identities here, or 'trusted authority', another
-- one whose people are trusted. fingerprint: SHA-256 of the own certificate, hexadecimal.
CREATE TABLE identity (
    number INTEGER PRIMARY KEY CHECK (number >= 1),
    kind TEXT NOT NULL CHECK (kind IN ('person', 'own authority', 'trusted authority')),
    person_id TEXT REFERENCES person (id) CHECK ((person_id IS NULL) = (kind <> 'person')),
    fingerprint TEXT NOT NULL UNIQUE CHECK (length(fingerprint) = 64)
) STRICT;
CREATE INDEX identity_by_person ON identity (person_id);

-- DER; position 1 is the own certificate, those after it its issuers.
CREATE TABLE identity_certificate (
    identity INTEGER NOT NULL REFERENCES identity (number),
    position INTEGER NOT NULL CHECK (position >= 1),
    certificate BLOB NOT NULL,
    PRIMARY KEY (identity, position)
) STRICT, WITHOUT ROWID;

-- The private key, encrypted under the passphrase of whom it belongs to: DER, PKCS #8 by PBES2.
-- wrong_passphrases: tries since the last right one.
CREATE TABLE identity_key (
    identity INTEGER PRIMARY KEY REFERENCES identity (number),
    encrypted_key BLOB NOT NULL,
    wrong_passphrases INTEGER NOT NULL CHECK (wrong_passphrases >= 0),
    last_wrong_at TEXT CHECK ((last_wrong_at IS NULL) = (wrong_passphrases = 0))
) STRICT;

CREATE TABLE identity_withdrawal (
    identity INTEGER PRIMARY KEY REFERENCES identity (number),
    history_sequence INTEGER NOT NULL REFERENCES history (sequence),
    reason TEXT NOT NULL CHECK (reason <> ''),
    remark TEXT NOT NULL
) STRICT;

-- DER (RFC 5280); each lists everything that the own authority ever revoked.
CREATE TABLE revocation_list (
    number INTEGER PRIMARY KEY CHECK (number >= 1),
    list BLOB NOT NULL
) STRICT;

-- Of a signing act. signature: CMS SignedData (RFC 5652), detached, over the 32 bytes of the row's
-- hash; it holds no certificates, they are the identity's.
CREATE TABLE history_signature (
    sequence INTEGER PRIMARY KEY REFERENCES history (sequence),
    identity INTEGER NOT NULL REFERENCES identity (number),
    signature BLOB NOT NULL
) STRICT;

CREATE TRIGGER history_seal_is_kept_on_insert BEFORE INSERT ON history_seal
WHEN EXISTS (SELECT 1 FROM history_seal WHERE sequence = NEW.sequence)
BEGIN SELECT RAISE(ABORT, 'a seal never changes'); END;
CREATE TRIGGER history_seal_never_changes BEFORE UPDATE ON history_seal
BEGIN SELECT RAISE(ABORT, 'a seal never changes'); END;
CREATE TRIGGER history_seal_stays BEFORE DELETE ON history_seal
BEGIN SELECT RAISE(ABORT, 'a seal never changes'); END;

CREATE TRIGGER history_signature_is_kept_on_insert BEFORE INSERT ON history_signature
WHEN EXISTS (SELECT 1 FROM history_signature WHERE sequence = NEW.sequence)
BEGIN SELECT RAISE(ABORT, 'a signature never changes'); END;
CREATE TRIGGER history_signature_never_changes BEFORE UPDATE ON history_signature
BEGIN SELECT RAISE(ABORT, 'a signature never changes'); END;
CREATE TRIGGER history_signature_stays BEFORE DELETE ON history_signature
BEGIN SELECT RAISE(ABORT, 'a signature never changes'); END;

CREATE TRIGGER archive_key_only_grows BEFORE INSERT ON archive_key
WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM archive_key)
BEGIN SELECT RAISE(ABORT, 'the archive''s keys are numbered one after the other'); END;
CREATE TRIGGER archive_key_never_changes BEFORE UPDATE ON archive_key
BEGIN SELECT RAISE(ABORT, 'an archive''s key never changes'); END;
CREATE TRIGGER archive_key_stays BEFORE DELETE ON archive_key
BEGIN SELECT RAISE(ABORT, 'an archive''s key never changes'); END;

CREATE TRIGGER person_is_kept_on_insert BEFORE INSERT ON person
WHEN EXISTS (SELECT 1 FROM person WHERE id = NEW.id OR name = NEW.name)
BEGIN SELECT RAISE(ABORT, 'no two people share an id or a name'); END;
CREATE TRIGGER person_keeps_id BEFORE UPDATE ON person
WHEN NEW.id <> OLD.id
    OR EXISTS (SELECT 1 FROM person WHERE name = NEW.name AND id <> NEW.id)
BEGIN SELECT RAISE(ABORT, 'no two people share an id or a name'); END;

CREATE TRIGGER person_stays BEFORE DELETE ON person
BEGIN SELECT RAISE(ABORT, 'a person is never taken out'); END;

CREATE TRIGGER identity_only_grows BEFORE INSERT ON identity
WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM identity)
BEGIN SELECT RAISE(ABORT, 'identities are numbered one after the other'); END;

CREATE TRIGGER identity_is_kept_on_insert BEFORE INSERT ON identity
WHEN EXISTS (SELECT 1 FROM identity WHERE fingerprint = NEW.fingerprint)
BEGIN SELECT RAISE(ABORT, 'an identity never changes'); END;
CREATE TRIGGER identity_never_changes BEFORE UPDATE ON identity
BEGIN SELECT RAISE(ABORT, 'an identity never changes'); END;
CREATE TRIGGER identity_stays BEFORE DELETE ON identity
BEGIN SELECT RAISE(ABORT, 'an identity never changes'); END;

CREATE TRIGGER identity_certificate_is_kept_on_insert BEFORE INSERT ON identity_certificate
WHEN EXISTS (SELECT 1 FROM identity_certificate WHERE identity = NEW.identity
               AND position = NEW.position)
BEGIN SELECT RAISE(ABORT, 'an identity never changes'); END;
CREATE TRIGGER identity_certificate_never_changes BEFORE UPDATE ON identity_certificate
BEGIN SELECT RAISE(ABORT, 'an identity never changes'); END;
CREATE TRIGGER identity_certificate_stays BEFORE DELETE ON identity_certificate
BEGIN SELECT RAISE(ABORT, 'an identity never changes'); END;

CREATE TRIGGER identity_withdrawal_is_kept_on_insert BEFORE INSERT ON identity_withdrawal
WHEN EXISTS (SELECT 1 FROM identity_withdrawal WHERE identity = NEW.identity)
BEGIN SELECT RAISE(ABORT, 'a withdrawal never changes'); END;
CREATE TRIGGER identity_withdrawal_never_changes BEFORE UPDATE ON identity_withdrawal
BEGIN SELECT RAISE(ABORT, 'a withdrawal never changes'); END;
CREATE TRIGGER identity_withdrawal_stays BEFORE DELETE ON identity_withdrawal
BEGIN SELECT RAISE(ABORT, 'a withdrawal never changes'); END;

CREATE TRIGGER revocation_list_only_grows BEFORE INSERT ON revocation_list
WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM revocation_list)
BEGIN SELECT RAISE(ABORT, 'revocation lists are numbered one after the other'); END;
CREATE TRIGGER revocation_list_never_changes BEFORE UPDATE ON revocation_list
BEGIN SELECT RAISE(ABORT, 'a revocation list never changes'); END;
CREATE TRIGGER revocation_list_stays BEFORE DELETE ON revocation_list
BEGIN SELECT RAISE(ABORT, 'a revocation list never changes'); END;
