// SPDX-License-Identifier: Apache-2.0
// Signing in, guessing, expiry and withdrawal.
#include "archive/sign_in.h"

#include "archive/connection.h"
#include "foundry_fixture.h"
#include "trust/identity.h"
#include "trust/key_attempts.h"

namespace model {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class SigningIn : public FoundryTest {
protected:
    Result<SignedIn> guess(const std::string& passphrase) {
        return signIn(*archive_, foundry::kInspector, SecretBytes(passphrase));
    }
    void wait(std::chrono::seconds time) { clock_.set(clock_.now() + time); }
};

TEST_F(SigningIn, GivesThePersonWithAKeyThatSigns) {
    const auto inspector = guess(foundry::kPassphrase);
    ASSERT_THAT(inspector, Succeeds());
    EXPECT_EQ(inspector->person(), foundry::everybody()[1]);
    EXPECT_EQ(inspector->actor().name, "Ilse Br\xc3\xb6ker");
    EXPECT_TRUE(inspector->has(Role::Inspector));
    EXPECT_FALSE(inspector->has(Role::QaManager));
    EXPECT_THAT(signDetached("text", inspector->key(), clock_.now()), Succeeds());
    // A right passphrase at once leaves no trace.
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(SigningIn, FailsForWhoIsUnknownOrHasNoIdentity) {
    EXPECT_THAT(signIn(*archive_, "P-99", foundry::passphrase()), FailsWith(ErrorKind::Input));
    ASSERT_THAT(savePerson(*archive_, {"P-20", "Nea", {}, false, {}, "", true}, 0, administrator()),
                Succeeds());
    const auto nobody = signIn(*archive_, "P-20", foundry::passphrase());
    ASSERT_THAT(nobody, FailsWith(ErrorKind::Input));
    EXPECT_THAT(nobody.error().message(), HasSubstr("no identity"));
}

TEST_F(SigningIn, SlowsDownGuessingAcrossPrograms) {
    const Head before = *archive_->head();
    for (int i = 0; i < kFreeAttempts; ++i) {
        const auto wrong = guess("wrong passphrase " + std::to_string(i));
        ASSERT_FALSE(wrong.ok());
        EXPECT_TRUE(isWrongPassphrase(wrong.error()));
    }
    EXPECT_EQ(archive_->head()->sequence, before.sequence + kFreeAttempts);
    // Nobody tries now, not even rightly, and not by another program.
    const auto waiting = guess(foundry::kPassphrase);
    ASSERT_THAT(waiting, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(waiting.error().message(), HasSubstr("try again in 2 s"));
    Archive other = reopened();
    EXPECT_THAT(signIn(other, foundry::kInspector, foundry::passphrase()),
                FailsWith(ErrorKind::Refused));
    // Others are not held up.
    EXPECT_THAT(signIn(other, foundry::kTrainee, foundry::passphrase()), Succeeds());
    wait(std::chrono::seconds(2));
    EXPECT_TRUE(isWrongPassphrase(guess("wrong again").error()));
    wait(std::chrono::seconds(3));
    EXPECT_THAT(guess(foundry::kPassphrase), FailsWith(ErrorKind::Refused));
    wait(std::chrono::seconds(1));
    ASSERT_THAT(guess(foundry::kPassphrase), Succeeds());
    // Forgotten, in the history too.
    EXPECT_EQ(archive_->history(archive_->head()->sequence)->front().action,
              "right passphrase given");
    EXPECT_TRUE(isWrongPassphrase(guess("wrong").error()));
    EXPECT_THAT(guess(foundry::kPassphrase), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(SigningIn, KeepsNothingOfAWrongPassphrase) {
    static_cast<void>(guess("a secret mistyped"));
    const auto history = archive_->history();
    ASSERT_THAT(history, Succeeds());
    for (const HistoryEntry& entry : *history) EXPECT_THAT(entry.bytes, Not(HasSubstr("mistyped")));
}

TEST_F(SigningIn, EndsWithTheCertificate) {
    const SignedIn administrator = this->administrator();
    clock_.set(foundry::validUntil() + std::chrono::seconds(1));
    const auto expired = guess(foundry::kPassphrase);
    ASSERT_THAT(expired, FailsWith(ErrorKind::Input));
    EXPECT_THAT(expired.error().message(),
                HasSubstr("expired on " + toText(foundry::validUntil())));
    const auto saved =
        savePerson(*archive_, {"P-20", "Nea", {}, false, {}, "", true}, 0, administrator);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saved.error().message(), HasSubstr("expired"));
    // Nor does it begin earlier, where a clock was set back.
    clock_.set(foundry::madeAt() - std::chrono::seconds(1));
    EXPECT_THAT(savePerson(*archive_, {"P-20", "Nea", {}, false, {}, "", true}, 0, administrator),
                FailsWith(ErrorKind::Refused));
}

TEST_F(SigningIn, EndsWithAWithdrawal) {
    const SignedIn inspector = signedIn(foundry::kInspector);
    wait(std::chrono::hours(1));
    ASSERT_THAT(withdrawIdentity(*archive_, foundry::kInspector, RevocationReason::KeyCompromise,
                                 "a note with the passphrase was found",
                                 foundry::authorityPassphrase(), administrator()),
                Succeeds());
    const auto refused = guess(foundry::kPassphrase);
    ASSERT_THAT(refused, FailsWith(ErrorKind::Input));
    EXPECT_THAT(refused.error().message(), HasSubstr("no identity of Ilse"));
    const auto connection = Connection::open("QSQLITE", QString::fromStdString(path()), "", path());
    const auto may = checkMaySign(**connection, inspector, clock_.now());
    ASSERT_THAT(may, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(may.error().message(), HasSubstr("withdrawn"));
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(SigningIn, NeedsTheRole) {
    EXPECT_THAT(checkRole(signedIn(foundry::kQaManager), Role::QaManager), Succeeds());
    const auto other = checkRole(signedIn(foundry::kInspector), Role::QaManager);
    ASSERT_THAT(other, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(other.error().message(), HasSubstr("QA manager"));
}

}  // namespace
}  // namespace model
