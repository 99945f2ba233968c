// SPDX-License-Identifier: Apache-2.0
#include "demo_db/staff.h"

#include "archive/identities.h"

namespace demo {

namespace {

using model::Method;
using model::Person;
using model::Result;
using model::Role;

constexpr auto kMagnetic = Method::Magnetic;
constexpr auto kPenetrant = Method::Penetrant;
constexpr auto kUltrasonic = Method::Ultrasonic;

model::SecretBytes passphrase() {
    return model::SecretBytes(std::string_view(kPassphrase));
}

Person inspector(const char* id, const char* name, std::map<Method, int> levels) {
    return {id, name, {Role::Inspector}, false, std::move(levels), "", true};
}

}  // namespace

std::vector<Person> staff() {
    return {
        {kAdministrator, "Hana Doležal-Říhová", {Role::Administrator}, false, {}, "", true},
        {kQaManager, "Aurelio Vantongeren", {Role::QaManager}, false, {}, "", true},
        {kThirdParty,
         "Solveig Tamaro",
         {Role::ThirdParty},
         false,
         {},
         "the purchaser's technical office",
         true},
        inspector("Q-4", "Ingrid Sjöquist-Åhlén", {{kMagnetic, 2}, {kPenetrant, 2}}),
        inspector("Q-5", "Rhys Penhallow", {{kMagnetic, 2}, {kPenetrant, 1}, {kUltrasonic, 2}}),
        inspector("Q-6", "Θεοδώρα Καλογρίδου", {{kMagnetic, 2}, {kPenetrant, 2}, {kUltrasonic, 2}}),
        inspector("Q-7", "Мирослава Ждановец", {{kMagnetic, 3}, {kPenetrant, 3}, {kUltrasonic, 3}}),
        inspector("Q-8", "Nuno Quintela-Prates", {{kMagnetic, 2}, {kPenetrant, 2}}),
    };
}

Result<SignedIns> engageStaff(model::Archive& archive, const model::Clock& clock) {
    const model::UtcTime now = clock.now();
    const std::vector<Person> all = staff();
    const model::SecretBytes shared = passphrase();
    constexpr std::chrono::days kYear{365};
    const model::UtcTime until = now + 10 * kYear;
    const model::AuthorityRequest authority{.name = "Quillmere demonstration authority",
                                            .organisation = "Quillmere Foundry (invented)",
                                            .country = "",
                                            .from = now,
                                            .until = now + 20 * kYear};
    if (auto made = model::setUp(archive, authority, shared, all.front(), shared, until); !made)
        return made.error();
    SignedIns signedIn;
    auto administrator = model::signIn(archive, kAdministrator, shared);
    if (!administrator) return administrator.error();
    for (std::size_t i = 1; i < all.size(); ++i) {
        const Person& person = all[i];
        if (const auto saved = model::savePerson(archive, person, 0, *administrator); !saved)
            return saved.error();
        if (auto issued = model::issueIdentity(archive, person.id, model::KeyKind::P256, until,
                                               shared, shared, *administrator);
            !issued)
            return issued.error();
        auto entered = model::signIn(archive, person.id, shared);
        if (!entered) return entered.error();
        signedIn.emplace(person.name, std::move(entered).value());
    }
    signedIn.emplace(all.front().name, std::move(administrator).value());
    return signedIn;
}

}  // namespace demo
