// SPDX-License-Identifier: Apache-2.0
// What an archive's registers hold, as rows that can be taken over again.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/archive.h"
#include "registers/field.h"

namespace app {

/// An entry as it stands.
struct ListedEntry {
    std::string key;
    std::int64_t version = 0;
    /// As many as it takes; the texts of fieldsOfRegister(), in that order.
    std::vector<std::vector<std::string>> rows;
};

/// Of the registers that model::registerNames() has. Input: there is no such register.
model::Result<std::vector<model::FieldInfo>> fieldsOfRegister(std::string_view registerName);

/// By key. `casting`: only what belongs to it (Input: the register is no casting's).
model::Result<std::vector<ListedEntry>> listRegister(const model::Archive& archive,
                                                     std::string_view registerName,
                                                     const std::optional<std::string>& casting);

}  // namespace app
