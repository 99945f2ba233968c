// SPDX-License-Identifier: Apache-2.0
// The fields of a setting: what each is called, in which unit it is, what it means and where that
// comes from.
#pragma once

#include <vector>

#include "fields/field_form.h"
#include "record/typed_reflector.h"

namespace app {

struct SettingField {
    std::string model::TypedSetting::*text;
    FieldFacts facts;
    bool length = false;  ///< in the setting's unit
};

/// In the order in which they stand; `heading` opens a group.
struct SettingGroup {
    QString heading;
    std::vector<SettingField> fields;
};

SettingGroup probeGroup();
SettingGroup materialGroup();
SettingGroup referenceGroup();
SettingGroup measuredGroup();

/// "Reference echo: gain" of a contract name, and what stands in it; null: there is no such field.
QString settingFieldName(const std::string& field);
const std::string* settingText(const model::TypedSetting& setting, const std::string& field);

/// Whether a field has a meaning with what else is set: no diameter of a rectangular element.
bool isNeeded(const model::TypedSetting& setting, const std::string& field);

}  // namespace app
