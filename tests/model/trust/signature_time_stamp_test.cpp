// SPDX-License-Identifier: Apache-2.0
// Time stamps from a service on this machine, `openssl ts -reply`.
#include "trust/signature_time_stamp.h"

#include <gtest/gtest.h>

#include "people/people.h"
#include "people/time_stamps.h"
#include "trust/signature.h"

namespace model {
namespace {

using people::kDay;

constexpr std::string_view kRecord = "casting 4711";

class TimeStampOracle : public testing::Test {
protected:
    static const people::LocalTimeStamps& stamps() {
        static const people::LocalTimeStamps local;
        return local;
    }
    static const std::string& signature() {
        static const std::string made = [] {
            const Rfc3161Service service = stamps().service();
            auto bytes = signDetached(kRecord, people::inspectorKey(), people::now(), {}, &service);
            EXPECT_TRUE(bytes.ok()) << bytes.error().message();
            return bytes.ok() ? *bytes : "";
        }();
        return made;
    }
    static TrustedCertificates trustWithClock() {
        TrustedCertificates trusted = people::trust();
        trusted.timeStampAnchors = {stamps().authority()};
        return trusted;
    }
    // A moment after the stamp, by the clock that made it: the stamp is made first, however long
    // that takes.
    static UtcTime later() {
        signature();
        return systemClock().now() + std::chrono::seconds(2);
    }
};

TEST_F(TimeStampOracle, ItsTimeStandsForTheSignature) {
    const auto report = verifyDetached(kRecord, signature(), trustWithClock(), later());
    ASSERT_TRUE(report.ok());
    EXPECT_TRUE(report->trusted()) << testing::PrintToString(report->remarks);
    ASSERT_TRUE(report->timeStamp);
    EXPECT_TRUE(report->timeStamp->intact && report->timeStamp->trusted);
    EXPECT_EQ(report->timeStamp->authority, "Tower clock");
    EXPECT_EQ(report->judgedAt, report->timeStamp->time);
    EXPECT_LE(std::chrono::abs(report->timeStamp->time - people::now()), std::chrono::minutes(10));
}

TEST_F(TimeStampOracle, OpensslVerifiesTheTokenOverTheSignatureValue) {
    const auto token = stamps().service().stamp(sha256(kRecord));
    ASSERT_TRUE(token.ok()) << token.error().message();
    stamps().folder().write("token", *token);
    const auto verified =
        stamps().folder().run("openssl ts -verify -digest " + toHex(sha256(kRecord)) +
                              " -in token -token_in -CAfile root.crt");
    EXPECT_EQ(verified.code, 0) << verified.output;
}

TEST_F(TimeStampOracle, OpensslStillVerifiesTheStampedSignature) {
    const people::Folder folder;
    folder.write("record", kRecord);
    folder.write("signature", signature());
    folder.write("ca.pem", certificateToPem(people::authority().certificate()));
    const auto verified = folder.run(
        "openssl cms -verify -cades -binary -inform DER -in signature -content record -CAfile "
        "ca.pem -purpose any -out got");
    EXPECT_EQ(verified.code, 0) << verified.output;
}

TEST_F(TimeStampOracle, ItOutlivesARevocationThatCameLater) {
    const auto stamped = verifyDetached(kRecord, signature(), trustWithClock(), later());
    ASSERT_TRUE(stamped.ok() && stamped->timeStamp);
    TrustedCertificates revoked = people::trustWithout(
        people::inspector(), stamped->timeStamp->time + std::chrono::seconds(1));
    const UtcTime muchLater = later() + kDay;
    EXPECT_FALSE(verifyDetached(kRecord, signature(), revoked, muchLater)->trusted());
    revoked.timeStampAnchors = {stamps().authority()};
    EXPECT_TRUE(verifyDetached(kRecord, signature(), revoked, muchLater)->trusted());
    revoked = people::trustWithout(people::inspector(), people::now() - kDay);
    revoked.timeStampAnchors = {stamps().authority()};
    EXPECT_FALSE(verifyDetached(kRecord, signature(), revoked, muchLater)->trusted());
}

TEST_F(TimeStampOracle, AnUntrustedServiceProvesNoTime) {
    const auto report = verifyDetached(kRecord, signature(), people::trust(), later());
    ASSERT_TRUE(report.ok() && report->timeStamp);
    EXPECT_TRUE(report->timeStamp->intact);
    EXPECT_FALSE(report->timeStamp->trusted);
    EXPECT_NE(report->judgedAt, report->timeStamp->time);
    EXPECT_TRUE(report->trusted());
}

TEST_F(TimeStampOracle, NoBitOfAStampedSignatureCanBeFlippedUnseen) {
    const TrustedCertificates trusted = trustWithClock();
    const UtcTime at = later();
    for (std::size_t byte = 0; byte < signature().size(); ++byte) {
        std::string flipped = signature();
        flipped[byte] = static_cast<char>(flipped[byte] ^ (1 << (byte % 8)));
        const auto report = verifyDetached(kRecord, flipped, trusted, at);
        EXPECT_FALSE(report.ok() && report->intact()) << "byte " << byte;
    }
}

TEST_F(TimeStampOracle, AnswersThatDoNotFitAreRefused) {
    const auto sign = [](Rfc3161Service::Transport transport) {
        const Rfc3161Service service(std::move(transport));
        return signDetached(kRecord, people::inspectorKey(), people::now(), {}, &service);
    };
    EXPECT_FALSE(sign([](const std::string&) { return std::string("no answer"); }).ok());
    EXPECT_FALSE(sign([](const std::string&) { return std::string(); }).ok());
    const auto down = sign([](const std::string&) -> Result<std::string> {
        return refusal("clock.example", "no connection");
    });
    ASSERT_FALSE(down.ok());
    EXPECT_EQ(down.error().place, "clock.example");
    // An answer given before, to another request.
    std::string old;
    ASSERT_TRUE(sign([&](const std::string& request) {
                    auto answer = stamps().answer(request);
                    if (answer) old = *answer;
                    return answer;
                }).ok());
    EXPECT_FALSE(sign([&](const std::string&) { return old; }).ok());
    EXPECT_FALSE(sign([&](const std::string& request) {
                     auto answer = stamps().answer(request);
                     if (answer) answer.value().back() ^= 1;
                     return answer;
                 }).ok());
}

}  // namespace
}  // namespace model
