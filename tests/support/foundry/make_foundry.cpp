// SPDX-License-Identifier: Apache-2.0
// make_foundry FOLDER: makes the archive of foundry.h.
#include <QCoreApplication>
#include <iostream>

#include "foundry/foundry.h"

namespace {

class Moment final : public model::Clock {
public:
    [[nodiscard]] model::UtcTime now() const override { return foundry::madeAt(); }
};

model::Result<void> make(const std::string& folder) {
    const Moment clock;
    const std::vector<model::Person> everybody = foundry::everybody();
    const model::SecretBytes passphrase = foundry::passphrase();
    auto archive = model::Archive::create(foundry::archiveIn(folder), model::ArchiveKind::Working,
                                          {everybody.front().name}, clock);
    if (!archive) return archive.error();
    auto done = model::setUp(*archive, foundry::authorityRequest(), foundry::authorityPassphrase(),
                             everybody.front(), passphrase, foundry::validUntil());
    if (!done) return done;
    const auto administrator = model::signIn(*archive, foundry::kAdministrator, passphrase);
    if (!administrator) return administrator.error();
    foundry::keepKey(folder, *administrator);
    for (std::size_t i = 1; i < everybody.size(); ++i) {
        const std::string& id = everybody[i].id;
        if (auto saved = model::savePerson(*archive, everybody[i], 0, *administrator); !saved)
            return saved.error();
        done = model::issueIdentity(*archive, id, model::KeyKind::P256, foundry::validUntil(),
                                    passphrase, foundry::authorityPassphrase(), *administrator);
        if (!done) return done;
        const auto person = model::signIn(*archive, id, passphrase);
        if (!person) return person.error();
        foundry::keepKey(folder, *person);
    }
    return {};
}

}  // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    if (argc != 2) return 2;
    const auto made = make(argv[1]);
    if (!made) std::cerr << made.error().message() << "\n";
    return made ? 0 : 1;
}
