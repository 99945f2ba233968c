// SPDX-License-Identifier: Apache-2.0
// Who people are, and that nobody becomes somebody else.
#include "archive/people.h"

#include "archive/connection.h"
#include "foundry_fixture.h"

namespace model {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;

using People = FoundryTest;

Person newcomer() {
    return {"P-20", "Néa Íslensk", {Role::Inspector, Role::Auditor}, true, {{Method::Penetrant, 1}},
            "",     true};
}

TEST_F(People, AreStoredWithEverythingThatIsKnownOfThem) {
    ASSERT_THAT(savePerson(*archive_, newcomer(), 0, administrator()), Succeeds());
    const auto stored = person(reopened(), "P-20");
    ASSERT_THAT(stored, Succeeds());
    EXPECT_EQ(stored->value, newcomer());
    EXPECT_EQ(stored->version, 1);
    Person changed = newcomer();
    changed.name = "Nea Other";
    changed.roles = {Role::QaManager};
    changed.manufacturing = false;
    changed.levels = {{Method::Magnetic, 3}, {Method::Ultrasonic, 2}};
    changed.active = false;
    EXPECT_THAT(savePerson(*archive_, changed, 0, administrator()), FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(savePerson(*archive_, changed, 1, administrator()), Succeeds());
    EXPECT_THAT(savePerson(*archive_, changed, 1, administrator()), FailsWith(ErrorKind::Conflict));
    EXPECT_EQ(person(*archive_, "P-20")->value, changed);
    EXPECT_EQ(people(*archive_)->size(), foundry::everybody().size() + 1);
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(People, AreSavedByAnAdministratorAlone) {
    for (const Person& one : foundry::everybody()) {
        if (one.roles.contains(Role::Administrator)) continue;
        const auto saved = savePerson(*archive_, newcomer(), 0, signedIn(one.id));
        ASSERT_THAT(saved, FailsWith(ErrorKind::Refused)) << one.id;
        EXPECT_THAT(saved.error().message(),
                    AllOf(HasSubstr(one.name), HasSubstr("administrator")));
    }
    EXPECT_THAT(person(*archive_, "P-20"), FailsWith(ErrorKind::Input));
}

TEST_F(People, ThatCannotBeAreRefused) {
    const auto refused = [&](auto change) {
        Person person = newcomer();
        change(person);
        const Head before = *archive_->head();
        EXPECT_THAT(savePerson(*archive_, person, 0, administrator()), FailsWith(ErrorKind::Input));
        EXPECT_EQ(*archive_->head(), before);
    };
    refused([](Person& person) { person.id = ""; });
    refused([](Person& person) { person.id = "P 20"; });
    refused([](Person& person) { person.id = "P-\xc3\xa9"; });
    refused([](Person& person) { person.id = "P\n"; });
    refused([](Person& person) { person.id = std::string(65, 'P'); });
    refused([](Person& person) { person.name = ""; });
    refused([](Person& person) { person.name = "  "; });
    refused([](Person& person) { person.name = " Nea"; });
    refused([](Person& person) { person.name = "Nea\nOther"; });
    refused([](Person& person) { person.name = "Nea\xff"; });
    refused([](Person& person) { person.name = std::string(65, 'N'); });
    refused([](Person& person) { person.name = "Ada Ferrous"; });  // somebody else's
    refused([](Person& person) { person.levels[Method::Magnetic] = 0; });
    refused([](Person& person) { person.levels[Method::Magnetic] = 4; });
    refused([](Person& person) { person.body = "A buyer"; });
    refused([](Person& person) { person.roles = {Role::ThirdParty}; });
    refused([](Person& person) {
        person.roles = {Role::ThirdParty, Role::QaManager};
        person.body = "A buyer";
    });
}

TEST_F(People, AlwaysHaveAnAdministratorAmongThem) {
    Person last = person(*archive_, foundry::kAdministrator)->value;
    last.active = false;
    EXPECT_THAT(savePerson(*archive_, last, 1, administrator()), FailsWith(ErrorKind::Input));
    last.active = true;
    last.roles = {Role::Auditor};
    EXPECT_THAT(savePerson(*archive_, last, 1, administrator()), FailsWith(ErrorKind::Input));
    Person second = newcomer();
    second.roles = {Role::Administrator};
    ASSERT_THAT(savePerson(*archive_, second, 0, administrator()), Succeeds());
    // One who cannot sign in is none.
    EXPECT_THAT(savePerson(*archive_, last, 1, administrator()), FailsWith(ErrorKind::Input));
    EXPECT_THAT(withdrawIdentity(*archive_, last.id, RevocationReason::NotNeeded, "",
                                 foundry::authorityPassphrase(), administrator()),
                FailsWith(ErrorKind::Input));
    EXPECT_THAT(findings(), IsEmpty());
    ASSERT_THAT(
        issueIdentity(*archive_, second.id, KeyKind::P256, foundry::validUntil(),
                      foundry::passphrase(), foundry::authorityPassphrase(), administrator()),
        Succeeds());
    EXPECT_THAT(withdrawIdentity(*archive_, last.id, RevocationReason::NotNeeded, "",
                                 foundry::authorityPassphrase(), administrator()),
                Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(People, SignInAgainAfterAChange) {
    const SignedIn before = administrator();
    Person changed = before.person();
    changed.name = "Ada Iron";
    ASSERT_THAT(savePerson(*archive_, changed, 1, before), Succeeds());
    const auto saved = savePerson(*archive_, newcomer(), 0, before);
    ASSERT_THAT(saved, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(saved.error().message(), HasSubstr("sign in again"));
    EXPECT_THAT(savePerson(*archive_, newcomer(), 0, administrator()), Succeeds());
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(People, WhoAreInactiveSignNothing) {
    const SignedIn manager = signedIn(foundry::kQaManager);
    Person inactive = manager.person();
    inactive.active = false;
    ASSERT_THAT(savePerson(*archive_, inactive, 1, administrator()), Succeeds());
    const auto connection = Connection::open("QSQLITE", QString::fromStdString(path()), "", path());
    ASSERT_THAT(connection, Succeeds());
    const auto may = checkMaySign(**connection, manager, clock_.now());
    ASSERT_THAT(may, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(may.error().message(), HasSubstr("inactive"));
    EXPECT_THAT(signIn(*archive_, foundry::kQaManager, foundry::passphrase()),
                FailsWith(ErrorKind::Input));
}

}  // namespace
}  // namespace model
