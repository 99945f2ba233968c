// SPDX-License-Identifier: Apache-2.0
// An entry of a register as a form holds it: texts by the keys of its fields.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "registers/field.h"

namespace app {

using EntryTexts = std::map<std::string, std::string>;

template <class T>
std::vector<model::FieldInfo> fieldInfos() {
    std::vector<model::FieldInfo> infos;
    for (const model::Field<T>& field : T::fields()) infos.push_back(field.info);
    return infos;
}

/// Empty texts are left out.
template <class T>
EntryTexts textsOf(const T& entry) {
    EntryTexts texts;
    for (const model::Field<T>& field : T::fields())
        if (const std::string& text = entry.*field.text; !text.empty())
            texts[std::string(field.info.key)] = text;
    return texts;
}

/// Puts the texts into an entry; a field whose key is not among them is left as it is.
template <class T>
void take(T& entry, const EntryTexts& texts) {
    for (const model::Field<T>& field : T::fields())
        if (const auto found = texts.find(std::string(field.info.key)); found != texts.end())
            entry.*field.text = found->second;
}

template <class T>
T entryFrom(const EntryTexts& texts) {
    T entry;
    take(entry, texts);
    return entry;
}

}  // namespace app
