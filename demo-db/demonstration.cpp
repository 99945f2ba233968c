// SPDX-License-Identifier: Apache-2.0
#include "demo_db/demonstration.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <filesystem>
#include <functional>
#include <system_error>
#include <utility>
#include <vector>

#include "archive/archive.h"
#include "demo_db/scenario.h"

namespace demo {
namespace {

using model::Actor;
using model::Result;

/// A clock that stands where it was set.
class SetClock final : public model::Clock {
public:
    [[nodiscard]] model::UtcTime now() const override { return now_; }
    void set(model::UtcTime time) { now_ = time; }

private:
    model::UtcTime now_{};
};

/// One thing that somebody entered on a day.
struct Entry {
    std::string day;  ///< 2026-09-22
    std::function<Result<void>(model::Archive&)> make;
};

template <class Value>
Result<void> done(const Result<Value>& result) {
    if (!result) return result.error();
    return {};
}

void addOrder(const Commission& commission, std::vector<Entry>& entries) {
    const Actor actor{commission.enteredBy};
    const std::string& day = commission.enteredOn;
    entries.push_back({day, [&commission, actor](model::Archive& archive) {
                           return done(archive.save(commission.order, 0, actor));
                       }});
    entries.push_back({day, [&commission, actor](model::Archive& archive) {
                           return done(archive.save(commission.part, 0, actor));
                       }});
    entries.push_back({day, [&commission, actor](model::Archive& archive) {
                           return archive.add(commission.plan, actor);
                       }});
}

void addCasting(const ScenarioCasting& casting, std::vector<Entry>& entries) {
    entries.push_back({casting.castOn, [&casting](model::Archive& archive) {
                           return done(archive.save(casting.casting, 0, Actor{casting.enteredBy}));
                       }});
    for (const SituatedExamination& examination : casting.examinations)
        entries.push_back(
            {examination.draft.examinedOn, [&examination](model::Archive& archive) {
                 return done(archive.save(examination.draft, Actor{examination.draft.examinedBy}));
             }});
}

/// Everything in the order of the days; within a day as the scenario has it.
std::vector<Entry> entriesOf(const std::vector<Commission>& commissions) {
    std::vector<Entry> entries;
    for (const Commission& commission : commissions) {
        addOrder(commission, entries);
        for (const ScenarioCasting& casting : commission.castings) addCasting(casting, entries);
    }
    std::ranges::stable_sort(entries, {}, &Entry::day);
    return entries;
}

/// Seven in the morning of an ISO 8601 date.
Result<model::UtcTime> morningOf(const std::string& date) {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    const auto read = [&date](std::size_t from, std::size_t to, auto& value) {
        const char* end = date.data() + to;
        const auto [stop, fault] = std::from_chars(date.data() + from, end, value);
        return fault == std::errc() && stop == end;
    };
    const bool shaped = date.size() == 10 && date[4] == '-' && date[7] == '-' && read(0, 4, year) &&
                        read(5, 7, month) && read(8, 10, day);
    const std::chrono::year_month_day calendar{std::chrono::year(year), std::chrono::month(month),
                                               std::chrono::day(day)};
    if (!shaped || !calendar.ok())
        return model::inputError("demonstration", "\"%1\" is not a date", {date});
    return model::UtcTime(std::chrono::sys_days(calendar) + std::chrono::hours(7));
}

Result<void> enter(model::Archive& archive, const std::vector<Entry>& entries, SetClock& clock) {
    const std::string* today = nullptr;
    model::UtcTime time{};
    for (const Entry& entry : entries) {
        if (today == nullptr || *today != entry.day) {
            const Result<model::UtcTime> morning = morningOf(entry.day);
            if (!morning) return morning.error();
            time = *morning;
            today = &entry.day;
        }
        time += std::chrono::minutes(11);
        clock.set(time);
        if (Result<void> made = entry.make(archive); !made) return made;
    }
    return {};
}

void removeWhatWasBegun(const std::string& path) {
    std::error_code ignored;  // the first failure is the one that is reported
    for (const char* ending : {"", "-wal", "-shm", ".files"})
        std::filesystem::remove_all(std::filesystem::path(path + ending), ignored);
}

}  // namespace

Result<void> writeDemonstration(const std::string& path) {
    const Result<std::vector<Commission>> commissions = readScenario();
    if (!commissions) return commissions.error();
    const std::vector<Entry> entries = entriesOf(*commissions);
    const Result<model::UtcTime> morning = morningOf(entries.front().day);
    if (!morning) return morning.error();

    SetClock clock;
    clock.set(*morning);
    Result<model::Archive> archive = model::Archive::create(
        path, model::ArchiveKind::Demonstration, Actor{commissions->front().enteredBy}, clock);
    if (!archive) return archive.error();
    Result<void> entered = enter(*archive, entries, clock);
    if (entered) return {};
    archive = Result<model::Archive>(entered.error());  // closes it
    removeWhatWasBegun(path);
    return entered;
}

}  // namespace demo
