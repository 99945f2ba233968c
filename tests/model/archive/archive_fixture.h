// SPDX-License-Identifier: Apache-2.0
// An archive in a folder of its own, a clock that is set, and one of each record.
#pragma once

#include <QTemporaryDir>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/search.h"

namespace model {

class SetClock final : public Clock {
public:
    [[nodiscard]] UtcTime now() const override { return now_; }
    void set(UtcTime now) { now_ = now; }

private:
    // 2026-11-25T09:30:00Z
    UtcTime now_ = std::chrono::sys_days(std::chrono::year(2026) / 11 / 25) +
                   std::chrono::hours(9) + std::chrono::minutes(30);
};

Order sampleOrder();
Part samplePart();
ZonePlan samplePlan();
Casting sampleCasting();
TypedIndication typedRow(const std::string& id, const std::string& x);
ExaminationDraft sampleDraft();
/// One setting and one reflector with every field filled, and half-typed ones.
ExaminationDraft sampleUltrasonicDraft();
IssueFacts sampleFacts();

/// Every field of a record, for comparing two of them.
std::string described(const Order& order);
std::string described(const Part& part);
std::string described(const ZonePlan& plan);
std::string described(const Casting& casting);
std::string described(const ExaminationDraft& draft);

/// The numbers of the certificates found, the newest first.
std::vector<std::int64_t> numbersIn(const Archive& archive, const CertificateSearch& search = {});

MATCHER_P(FailsWith, kind, "") {
    if (arg.ok()) {
        *result_listener << "succeeded";
        return false;
    }
    *result_listener << arg.error().message();
    return arg.error().kind == kind;
}

MATCHER(Succeeds, "") {
    if (!arg.ok()) *result_listener << arg.error().message();
    return arg.ok();
}

class ArchiveTest : public testing::Test {
protected:
    ArchiveTest();

    [[nodiscard]] std::string pathOf(const std::string& name) const {
        return folder_.filePath(QString::fromStdString(name)).toStdString();
    }
    [[nodiscard]] std::string path() const { return pathOf("works.fettlemark"); }

    /// A second program's, or this one after a restart.
    [[nodiscard]] Archive reopened() const {
        auto archive = Archive::open(path(), clock_);
        EXPECT_THAT(archive, Succeeds());
        return std::move(*archive);
    }

    /// Order, part, plan, casting and one draft.
    void fill();
    /// What verify() finds, one message each.
    [[nodiscard]] std::vector<std::string> findings(
        const std::optional<Head>& held = std::nullopt) const;

    SetClock clock_;
    QTemporaryDir folder_;
    const Actor actor_{"A. Bench"};
    std::optional<Archive> archive_;
};

}  // namespace model
