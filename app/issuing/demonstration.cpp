// SPDX-License-Identifier: Apache-2.0
#include "issuing/demonstration.h"

#include "demo_db/demonstration.h"
#include "issuing/issue.h"

namespace app {

model::Result<void> writeDemonstration(const std::string& path, const std::string& programVersion) {
    const auto settings = [&programVersion](const model::Clock& clock) {
        IssueSettings made;
        made.worksName = "Quillmere Foundry";
        made.worksAddress = "Lock Street 3, Quillmere";
        made.place = "Quillmere";
        made.programVersion = programVersion;
        made.clock = &clock;
        return made;
    };
    return demo::writeDemonstration(
        path, {.present =
                   [&](model::Archive& archive, const std::string& serial,
                       const model::SignedIn& person, const model::Clock& clock) {
                       return presentCasting(archive, serial, person, settings(clock));
                   },
               .endorse =
                   [&](model::Archive& archive, std::int64_t number, const model::SignedIn& person,
                       const model::Clock& clock) {
                       return endorseCertificate(archive, number, person, settings(clock));
                   },
               .release =
                   [&](model::Archive& archive, std::int64_t number, const model::SignedIn& person,
                       const model::Clock& clock) {
                       return releaseCertificate(archive, number, person, settings(clock));
                   }});
}

}  // namespace app
