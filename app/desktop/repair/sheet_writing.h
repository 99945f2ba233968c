// SPDX-License-Identifier: Apache-2.0
// The papers of the workshop, written as PDF away from the window's thread.
#pragma once

#include <QObject>
#include <functional>
#include <memory>
#include <string>

#include "base/result.h"
#include "judge/verdict.h"
#include "record/records.h"

namespace app {

enum class WorkshopSheet { MarkingOut, WeldMap };

/// What a sheet is made from, as it was when it was asked for.
struct SheetOrder {
    WorkshopSheet sheet = WorkshopSheet::MarkingOut;
    model::CastingFile file;
    model::Verdict verdict;
    std::string works;
    std::string version;
    bool demonstration = false;
    std::string path;
};

/// Writes it, and calls `then` on this thread unless `context` is gone by then.
void writeSheet(std::shared_ptr<const SheetOrder> order, QObject* context,
                std::function<void(const model::Result<void>&)> then);

}  // namespace app
