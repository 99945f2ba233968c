// SPDX-License-Identifier: Apache-2.0
// How Replay and its parts hold what the history says against what is stored. For the .cpp files of
// this folder only.
#pragma once

#include <string>

#include "base/digest.h"
#include "trust/canonical.h"

namespace model::replayed {

inline constexpr char kAltered[] = "is not what the history says was written";
inline constexpr char kUnknown[] = "is stored, but not in the history";

/// Of values made here or read from canonical bytes, so that they have bytes; a stored text that
/// has none (it is no UTF-8) gets a digest that no value has.
inline Digest digestOf(const Canonical& value) {
    const auto bytes = canonicalBytes(value);
    return bytes ? sha256(*bytes) : Digest{};
}

/// Where a table has columns for time and person, they are compared with the history's too.
inline Canonical::Object signedContent(Canonical::Object content, const std::string& time,
                                       const std::string& person) {
    content["time"] = time;
    content["person"] = person;
    return content;
}

}  // namespace model::replayed
