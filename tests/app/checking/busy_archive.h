// SPDX-License-Identifier: Apache-2.0
// An archive of the invented foundry Quillmere in which everything that can be done was done: every
// table has rows, and what was issued is signed.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>

#include "archive/archive.h"
#include "foundry/people.h"
#include "issuing/issue.h"

namespace app {

/// A second later each time that it is asked.
class TickingClock final : public model::Clock {
public:
    explicit TickingClock(model::UtcTime from) : now_(from) {}
    [[nodiscard]] model::UtcTime now() const override { return now_ += std::chrono::seconds(1); }
    void advance(std::chrono::days days) { now_ += days; }

private:
    mutable model::UtcTime now_;
};

/// What a step gives; a scenario that fails is no test at all.
template <class T>
T must(model::Result<T> result) {
    if (!result) throw std::runtime_error(result.error().message());
    return std::move(result).value();
}
inline void must(const model::Result<void>& result) {
    if (!result) throw std::runtime_error(result.error().message());
}

class BusyArchive {
public:
    /// Makes it at `path`, where nothing may be.
    explicit BusyArchive(const std::string& path);

    [[nodiscard]] const model::Clock& clock() const { return clock_; }
    [[nodiscard]] model::Archive& archive() { return archive_; }

    /// A casting with one zone, examined, its examination signed; orders are "O-31", "O-32".
    void signedCasting(const std::string& serial, const std::string& order,
                       const std::string& length = "",
                       const std::string& inspector = foundry::kInspector);
    /// Signs all its drafts as they are.
    void signAll(const std::string& serial, const std::string& rejection = "",
                 const std::string& inspector = foundry::kInspector);
    std::int64_t present(const std::string& serial);
    void endorse(std::int64_t number);
    void release(std::int64_t number);
    [[nodiscard]] IssueSettings settings() const;
    [[nodiscard]] model::SignedIn person(const std::string& id) const;

    /// Everything that can be done, once at least.
    void live();

private:
    void makeOrders();
    void makeDrafts();
    void makeUltrasonicDraft();
    void keepRegisters();
    /// Every serial number that a casting stands for.
    void stateSeries(const std::string& serial, const std::string& series);
    void disposeOfOne();
    void lookAfterPeople();

    TickingClock clock_;
    model::Archive archive_;
    const model::Actor actor_{"Ilse Bröker"};
};

}  // namespace app
