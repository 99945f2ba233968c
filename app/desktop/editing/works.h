// SPDX-License-Identifier: Apache-2.0
// What stands on every certificate from this window beside what the archive holds: the works and
// where people sign. Remembered in the settings.
#pragma once

#include <memory>
#include <string>

#include "archive/archive.h"
#include "issuing/issue.h"

namespace app {

struct Works {
    std::string name;
    std::string address;     ///< may be empty, may have several lines
    std::string place;       ///< where people sign; may be empty
    std::string timeStamps;  ///< URL of an RFC 3161 service; empty: no time stamps
};

/// As kept last; of a demonstration its own invented ones.
Works worksOf(model::ArchiveKind kind);
void keep(const Works& works);

/// For issuing on the archive's thread: owns what the settings borrow.
class IssueMeans {
public:
    /// Input: the address of the time-stamp service is none.
    static model::Result<std::shared_ptr<const IssueMeans>> make(const Works& works);
    [[nodiscard]] const IssueSettings& settings() const { return settings_; }

private:
    IssueSettings settings_;
    std::unique_ptr<model::TimeStampService> timeStamps_;
};

}  // namespace app
