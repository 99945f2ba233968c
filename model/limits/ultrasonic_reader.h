// SPDX-License-Identifier: Apache-2.0
// Reads what only tables for ultrasonic testing state: rim, recording limits, what cannot be
// measured, clusters, and the conditions of rules.
#pragma once

#include <optional>
#include <string_view>

#include "limits/limit_table.h"
#include "limits/statement.h"

namespace model {

class UltrasonicReader {
public:
    /// Reads into `table`.
    explicit UltrasonicReader(LimitTable& table) : table_(table) {}

    void rim(Statement& in);
    void notMeasurable(Statement& in);
    void clusters(Statement& in);

    /// Begins a recording limit, or reads that there is none.
    void recording(Statement& in);
    /// Reads "columns" and "row" below the recording limit begun last.
    void columns(Statement& in);
    void row(Statement& in);
    /// Whether "columns" and "row" belong to a recording limit.
    [[nodiscard]] bool inRecording() const { return inRecording_; }
    /// Ends the recording limit begun last, if any; says what it lacks.
    std::optional<Error> finish();

private:
    LimitTable& table_;
    bool inRecording_ = false;
    bool columnsStated_ = false;
    bool banded_ = false;
    int line_ = 0;  // where the recording limit begun last stands
};

/// "length > 10 mm at SOURCE", after the word "only".
Condition readCondition(Statement& in);

}  // namespace model
