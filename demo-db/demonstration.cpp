// SPDX-License-Identifier: Apache-2.0
#include "demo_db/demonstration.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <filesystem>
#include <functional>
#include <map>
#include <set>
#include <system_error>
#include <utility>
#include <vector>

#include "archive/archive.h"
#include "archive/attestation.h"
#include "archive/lifecycle.h"
#include "archive/signed_record.h"
#include "demo_db/course.h"
#include "demo_db/scenario.h"
#include "demo_db/staff.h"

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

/// The archive as it is being filled.
struct Filling {
    model::Archive& archive;
    const SignedIns& staff;
    const SetClock& clock;
    const Issuing& issuing;
    std::map<std::string_view, std::int64_t> numbers;  ///< of certificates, by serial number

    [[nodiscard]] const model::SignedIn& person(std::string_view name) const {
        return staff.at(std::string(name));
    }
    [[nodiscard]] const model::SignedIn& byId(std::string_view id) const {
        return std::ranges::find(
                   staff, id,
                   [](const auto& one) { return std::string_view(one.second.person().id); })
            ->second;
    }
};

/// One thing that somebody entered on a day.
struct Entry {
    std::string day;  ///< 2026-09-22
    std::function<Result<void>(Filling&)> make;
};

template <class Value>
Result<void> done(const Result<Value>& result) {
    if (!result) return result.error();
    return {};
}

void addOrder(const Commission& commission, std::vector<Entry>& entries) {
    const Actor actor{commission.enteredBy};
    const std::string& day = commission.enteredOn;
    entries.push_back({day, [&commission, actor](Filling& in) {
                           return done(in.archive.save(commission.order, 0, actor));
                       }});
    entries.push_back({day, [&commission, actor](Filling& in) {
                           return done(in.archive.save(commission.part, 0, actor));
                       }});
    entries.push_back({day, [&commission, actor](Filling& in) {
                           return in.archive.add(commission.plan, actor);
                       }});
}

const Course* courseOf(const std::string& serial) {
    const auto found = std::ranges::find(courses(), serial, &Course::serial);
    return found == courses().end() ? nullptr : &*found;
}

/// Enters an examination, and signs it at once where its casting is to be presented.
Result<void> examine(Filling& in, model::ExaminationDraft draft) {
    auto first = recordNamed(in.archive, draft.casting, draft.conditions.firstRecord);
    if (!first) return first.error();
    draft.conditions.firstRecord = std::move(*first);
    const auto saved = in.archive.save(draft, Actor{draft.examinedBy});
    if (!saved) return saved.error();
    if (courseOf(draft.casting) == nullptr) return {};
    return done(model::signRecord(in.archive, saved->id, saved->version, std::nullopt,
                                  in.person(draft.examinedBy)));
}

void addEntry(const RegisterEntry& entry, std::vector<Entry>& entries) {
    entries.push_back(
        {entry.on, [&entry](Filling& in) { return enter(in.archive, entry, in.staff); }});
}

void addCasting(const ScenarioCasting& casting, std::vector<Entry>& entries) {
    entries.push_back({casting.castOn, [&casting](Filling& in) {
                           return done(
                               in.archive.save(casting.casting, 0, Actor{casting.enteredBy}));
                       }});
    for (const SituatedExamination& examination : casting.examinations)
        entries.push_back({examination.draft.examinedOn,
                           [&examination](Filling& in) { return examine(in, examination.draft); }});
    for (const RegisterEntry& entry : casting.dossier) addEntry(entry, entries);
}

/// The QA manager attests every limit table by which something is to be certified.
void addAttestations(const std::vector<Commission>& commissions, std::vector<Entry>& entries) {
    std::set<std::string> tables;
    for (const Commission& commission : commissions) {
        const bool certified = std::ranges::any_of(
            commission.castings,
            [](const ScenarioCasting& one) { return courseOf(one.casting.serial) != nullptr; });
        if (!certified) continue;
        for (const model::PlannedZone& zone : commission.plan.zones)
            for (const model::RequiredTest& test : zone.tests) tables.insert(test.table);
    }
    for (const std::string& id : tables)
        entries.push_back({"2026-09-14", [id](Filling& in) -> Result<void> {
                               const auto all = in.archive.tables();
                               if (!all) return all.error();
                               return model::attest(in.archive, all->find(id)->digest,
                                                    "invented copy of the demonstration",
                                                    in.byId(kQaManager));
                           }});
}

void addCourse(const Course& course, std::vector<Entry>& entries) {
    const auto on = [&entries](std::string_view day, std::function<Result<void>(Filling&)> make) {
        if (!day.empty()) entries.push_back({std::string(day), std::move(make)});
    };
    on(course.presentedOn, [&course](Filling& in) -> Result<void> {
        const auto number = in.issuing.present(in.archive, std::string(course.serial),
                                               in.person(course.inspector), in.clock);
        if (!number) return number.error();
        in.numbers[course.serial] = *number;
        return {};
    });
    on(course.endorsedOn, [&course](Filling& in) {
        return in.issuing.endorse(in.archive, in.numbers.at(course.serial), in.byId(kThirdParty),
                                  in.clock);
    });
    on(course.releasedOn, [&course](Filling& in) {
        return in.issuing.release(in.archive, in.numbers.at(course.serial), in.byId(kQaManager),
                                  in.clock);
    });
    on(course.returnedOn, [&course](Filling& in) {
        return model::returnCasting(in.archive, in.numbers.at(course.serial),
                                    std::string(course.returnedFor), in.byId(kQaManager));
    });
}

/// Everything in the order of the days; within a day as the scenario has it.
std::vector<Entry> entriesOf(const std::vector<Commission>& commissions,
                             const std::vector<RegisterEntry>& works, bool issued) {
    std::vector<Entry> entries;
    for (const RegisterEntry& entry : works) addEntry(entry, entries);
    for (const Commission& commission : commissions) {
        addOrder(commission, entries);
        for (const ScenarioCasting& casting : commission.castings) addCasting(casting, entries);
    }
    addAttestations(commissions, entries);
    if (issued)
        for (const Course& course : courses()) addCourse(course, entries);
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

Result<void> enter(Filling& filling, const std::vector<Entry>& entries, SetClock& clock) {
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
        if (Result<void> made = entry.make(filling); !made) return made;
    }
    return {};
}

void removeWhatWasBegun(const std::string& path) {
    std::error_code ignored;  // the first failure is the one that is reported
    for (const char* ending : {"", "-wal", "-shm", ".files", ".key"})
        std::filesystem::remove_all(std::filesystem::path(path + ending), ignored);
}

}  // namespace

Result<void> writeDemonstration(const std::string& path, const Issuing& issuing) {
    const Result<std::vector<Commission>> commissions = readScenario();
    if (!commissions) return commissions.error();
    const Result<std::vector<RegisterEntry>> works = readWorksEntries();
    if (!works) return works.error();
    const std::vector<Entry> entries = entriesOf(*commissions, *works, bool(issuing.present));
    const Result<model::UtcTime> morning = morningOf(entries.front().day);
    if (!morning) return morning.error();

    SetClock clock;
    clock.set(*morning);
    Result<model::Archive> archive = model::Archive::create(
        path, model::ArchiveKind::Demonstration, Actor{commissions->front().enteredBy}, clock);
    if (!archive) return archive.error();
    Result<void> entered;
    {
        const Result<SignedIns> staff = engageStaff(*archive, clock);
        if (staff) {
            Filling filling{*archive, *staff, clock, issuing, {}};
            entered = enter(filling, entries, clock);
        } else {
            entered = staff.error();
        }
    }
    if (entered) return {};
    archive = Result<model::Archive>(entered.error());  // closes it
    removeWhatWasBegun(path);
    return entered;
}

}  // namespace demo
