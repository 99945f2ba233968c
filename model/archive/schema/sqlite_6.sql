-- SPDX-License-Identifier: Apache-2.0
-- Schema 6, SQLite: ultrasonic examinations, and finding a file by its bytes.

-- What is stated for the examination as a whole; NULL: not stated. testability_stated: 1 where
-- anything was said of whether the casting lets a reflector be seen, even if no figure was.
ALTER TABLE examination ADD COLUMN zone_area_millionth_mm2 INTEGER
    CHECK (zone_area_millionth_mm2 >= 0);
ALTER TABLE examination ADD COLUMN testability_stated INTEGER NOT NULL DEFAULT 0
    CHECK (testability_stated IN (0, 1));
ALTER TABLE examination ADD COLUMN smallest_fbh_nm INTEGER
    CHECK (smallest_fbh_nm IS NULL OR (testability_stated = 1 AND smallest_fbh_nm >= 0));
ALTER TABLE examination ADD COLUMN signal_to_noise_millionth_db INTEGER
    CHECK (signal_to_noise_millionth_db IS NULL OR testability_stated = 1);
ALTER TABLE examination ADD COLUMN dead_zone_nm INTEGER CHECK (dead_zone_nm >= 0);

-- From where and how it was scanned.
CREATE TABLE examination_direction (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    direction TEXT NOT NULL,
    PRIMARY KEY (examination_id, position)
) STRICT, WITHOUT ROWID;

-- A probe with its material and reference. In this table and the next, as in indication: each field
-- as typed, beside a number the exact value, NULL where the text is empty or no number. What is no
-- length is held in millionths of its unit.
CREATE TABLE ultrasonic_setting (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    unit TEXT NOT NULL CHECK (unit IN ('mm', 'in')),
    name TEXT NOT NULL,
    probe TEXT NOT NULL,
    kind TEXT NOT NULL,
    element TEXT NOT NULL,
    diameter TEXT NOT NULL,
    diameter_nm INTEGER,
    element_width TEXT NOT NULL,
    element_width_nm INTEGER,
    element_length TEXT NOT NULL,
    element_length_nm INTEGER,
    front TEXT NOT NULL,
    front_nm INTEGER,
    frequency TEXT NOT NULL,
    frequency_millionth_mhz INTEGER,
    probe_angle TEXT NOT NULL,
    probe_angle_millionth_deg INTEGER,
    velocity TEXT NOT NULL,
    velocity_millionth_m_s INTEGER,
    attenuation TEXT NOT NULL,
    attenuation_millionth_db_m INTEGER,
    thickness TEXT NOT NULL,
    thickness_nm INTEGER,
    surface TEXT NOT NULL,
    radius TEXT NOT NULL,
    radius_nm INTEGER,
    reference TEXT NOT NULL,
    reference_on TEXT NOT NULL,
    block TEXT NOT NULL,
    reference_velocity TEXT NOT NULL,
    reference_velocity_millionth_m_s INTEGER,
    reference_attenuation TEXT NOT NULL,
    reference_attenuation_millionth_db_m INTEGER,
    reference_path TEXT NOT NULL,
    reference_path_nm INTEGER,
    reference_diameter TEXT NOT NULL,
    reference_diameter_nm INTEGER,
    reference_gain TEXT NOT NULL,
    reference_gain_millionth_db INTEGER,
    reference_screen TEXT NOT NULL,
    reference_screen_millionth_percent INTEGER,
    transfer TEXT NOT NULL,
    transfer_millionth_db INTEGER,
    known_thickness TEXT NOT NULL,
    known_thickness_nm INTEGER,
    shown_thickness TEXT NOT NULL,
    shown_thickness_nm INTEGER,
    set_velocity TEXT NOT NULL,
    set_velocity_millionth_m_s INTEGER,
    first_echo_number TEXT NOT NULL,
    first_echo_number_millionth INTEGER,
    first_echo_gain TEXT NOT NULL,
    first_echo_gain_millionth_db INTEGER,
    second_echo_number TEXT NOT NULL,
    second_echo_number_millionth INTEGER,
    second_echo_gain TEXT NOT NULL,
    second_echo_gain_millionth_db INTEGER,
    PRIMARY KEY (examination_id, position)
) STRICT, WITHOUT ROWID;

-- An ultrasonic indication: where, the reading, and sizes that were typed.
CREATE TABLE reflector (
    examination_id INTEGER NOT NULL REFERENCES examination (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    unit TEXT NOT NULL CHECK (unit IN ('mm', 'in')),
    id TEXT NOT NULL,
    x TEXT NOT NULL,
    x_nm INTEGER,
    y TEXT NOT NULL,
    y_nm INTEGER,
    heading TEXT NOT NULL,
    heading_millionth_deg INTEGER,
    setting TEXT NOT NULL,
    sound_path TEXT NOT NULL,
    sound_path_nm INTEGER,
    gain TEXT NOT NULL,
    gain_millionth_db INTEGER,
    screen TEXT NOT NULL,
    screen_millionth_percent INTEGER,
    echo_drop TEXT NOT NULL,
    echo_drop_millionth_db INTEGER,
    moved_along TEXT NOT NULL,
    moved_along_nm INTEGER,
    moved_across TEXT NOT NULL,
    moved_across_nm INTEGER,
    depth TEXT NOT NULL,
    depth_nm INTEGER,
    fbh TEXT NOT NULL,
    fbh_nm INTEGER,
    length TEXT NOT NULL,
    length_nm INTEGER,
    width TEXT NOT NULL,
    width_nm INTEGER,
    through_wall TEXT NOT NULL,
    through_wall_nm INTEGER,
    angle TEXT NOT NULL,
    angle_millionth_deg INTEGER,
    area TEXT NOT NULL,
    area_millionth_mm2 INTEGER,
    back_wall_loss TEXT NOT NULL,
    back_wall_loss_millionth_db INTEGER,
    back_wall_loss_explained TEXT NOT NULL,
    over_reference TEXT NOT NULL,
    over_reference_millionth_db INTEGER,
    wall TEXT NOT NULL,
    wall_nm INTEGER,
    not_measurable TEXT NOT NULL,
    kind TEXT NOT NULL,
    relevance TEXT NOT NULL,
    reason TEXT NOT NULL,
    PRIMARY KEY (examination_id, position)
) STRICT, WITHOUT ROWID;

-- Whose file has these bytes.
CREATE INDEX certificate_by_file ON certificate (file_sha256);
CREATE INDEX presentation_by_file ON presentation (file_sha256);
CREATE INDEX endorsement_by_file ON endorsement (file_sha256);
