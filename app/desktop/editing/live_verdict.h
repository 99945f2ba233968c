// SPDX-License-Identifier: Apache-2.0
// The verdict on a casting while it is typed. What cannot be read yet is left out of the judging,
// named, and keeps every examination that it could touch from being called acceptable.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "judge/verdict.h"
#include "limits/table_set.h"
#include "record/records.h"

namespace app {

/// What stands against one typed row; `field` is the contract's name, empty for the whole row.
struct RowProblem {
    int examination = 0;  ///< index in the casting's file
    int row = 0;          ///< index among the examination's rows
    std::string field;
    model::Error error;
};

/// What stands against a whole examination, such as a table that is not at hand.
struct ExaminationProblem {
    int examination = 0;
    model::Error error;
};

/// One examination as judged now.
struct LiveExamination {
    model::Word word = model::Word::NotJudged;
    bool partial = false;  ///< something on its surface could not be read or judged yet
    std::optional<model::ExaminationVerdict> verdict;  ///< of what could be read
};

struct LiveVerdict {
    std::vector<LiveExamination> examinations;  ///< as in the casting's file
    std::vector<RowProblem> rowProblems;
    std::vector<ExaminationProblem> examinationProblems;
    /// Of the whole sheet; only where nothing was left out.
    std::optional<model::Verdict> complete;

    /// The worst word of what counts: a failure stands whatever else cannot be read yet.
    [[nodiscard]] model::Word worst() const;
};

LiveVerdict judgeLive(const model::CastingFile& file, const model::TableSet& tables);

}  // namespace app
