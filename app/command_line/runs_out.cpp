// SPDX-License-Identifier: Apache-2.0
#include "runs_out.h"

#include "archive/registers.h"
#include "base/clock.h"
#include "columns.h"
#include "conditions/running_out.h"
#include "exchange/json_text.h"
#include "qt_core.h"
#include "signing_in.h"
#include "whole_number.h"

namespace app {
namespace {

using model::JsonValue;
using model::Result;

constexpr int kDays = 60;
constexpr std::int64_t kMostDays = 36'525;  // a hundred years

std::string jsonOf(const std::vector<model::RunsOut>& all, const std::string& today, int days) {
    return model::writeJson(JsonValue::object(
        {{"format", JsonValue::string("fettlemark-runs-out/1")},
         {"on", JsonValue::string(today)},
         {"days", JsonValue::count(days)},
         {"runs_out", JsonValue::arrayOf(all, [](const model::RunsOut& one) {
              return JsonValue::object({{"last_day", JsonValue::string(one.lastDay)},
                                        {"over", JsonValue::boolean(one.isOver)},
                                        {"register", JsonValue::string(one.registers)},
                                        {"key", JsonValue::string(one.key)},
                                        {"what", JsonValue::string(one.what)},
                                        {"of", JsonValue::string(one.who)}});
          })}}));
}

Result<Outcome> listRunningOut(const Arguments& arguments) {
    int days = kDays;
    if (arguments.has("--days")) {
        const auto given = wholeNumber(arguments, "--days");
        if (!given) return given.error();
        if (*given > kMostDays)
            return model::inputError("--days", "is above %1", {std::to_string(kMostDays)});
        days = static_cast<int>(*given);
    }
    std::string today = model::toText(model::systemClock().now()).substr(0, 10);
    if (const std::string* day = arguments.value("--on")) {
        if (const auto date = dayFrom(arguments, "--on"); !date) return date.error();
        today = *day;
    }
    const QtCore qt;
    const auto archive = model::Archive::openForReading(*arguments.value("--db"));
    if (!archive) return archive.error();
    const auto holdings = model::holdings(*archive);
    if (!holdings) return holdings.error();
    const auto all = model::runningOut(*holdings, today, days);
    if (arguments.has("--json")) return Outcome{ExitCode::Done, jsonOf(all, today, days)};
    Outcome outcome;
    for (const model::RunsOut& one : all)
        outcome.text += lineOf({one.lastDay, one.isOver ? "over" : "", std::string(one.registers),
                                one.what, one.who, one.key});
    if (outcome.text.empty()) outcome.text = "nothing runs out\n";
    return outcome;
}

}  // namespace

Command runsOutCommand() {
    return {
        .name = "runs-out",
        .operand = "",
        .summary = "lists calibrations, certificates, batches that run out",
        .details =
            "One line each, the earliest first, columns between tabs: the last day on which it\n"
            "holds, \"over\" where that is past, register, what it is, of whom or what, and the\n"
            "entry. A column without content holds \"-\". --json prints\n"
            "fettlemark-runs-out/1.\n",
        .options = {kDatabaseOption,
                    {"--days", "N", "looks so many days ahead; 60 where it is not given"},
                    {"--on", "DATE", "in place of today"},
                    {"--json", "", "prints JSON"}},
        .run = &listRunningOut};
}

}  // namespace app
