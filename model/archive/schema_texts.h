// SPDX-License-Identifier: Apache-2.0
// The scripts of schema/, embedded at build.
#pragma once

#include <string_view>

namespace model {

extern const std::string_view kSqliteSchema1;

}  // namespace model
