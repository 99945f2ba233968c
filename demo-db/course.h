// SPDX-License-Identifier: Apache-2.0
// What becomes of the scenario's castings once they are examined.
#pragma once

#include <span>
#include <string_view>

namespace demo {

/// From signed records to a certificate. Dates are ISO 8601; empty: does not happen.
struct Course {
    std::string_view serial;
    std::string_view inspector;  ///< name of who presents it
    std::string_view presentedOn;
    std::string_view endorsedOn;   ///< by the third party; type 3.2
    std::string_view releasedOn;   ///< by the QA manager
    std::string_view returnedOn;   ///< by the QA manager
    std::string_view returnedFor;  ///< the reason
};

/// Castings without a course stay drafts.
std::span<const Course> courses();

}  // namespace demo
