// SPDX-License-Identifier: Apache-2.0
// The people of the invented foundry Quillmere, one for each part in the work.
#pragma once

#include <vector>

#include "archive/people.h"

namespace foundry {

inline constexpr const char* kAdministrator = "P-1";
inline constexpr const char* kInspector = "P-2";  ///< MT 2, PT 2, UT 2
inline constexpr const char* kLevel3 = "P-3";     ///< an inspector, MT 3, PT 3
inline constexpr const char* kQaManager = "P-4";
inline constexpr const char* kWorksManager = "P-5";  ///< QA manager, but of manufacturing
inline constexpr const char* kThirdParty = "P-6";
inline constexpr const char* kTrainee = "P-7";  ///< an inspector, MT 1, no other
inline constexpr const char* kAuditor = "P-8";

inline std::vector<model::Person> everybody() {
    using model::Method;
    using model::Role;
    std::vector<model::Person> all(8);
    all[0] = {kAdministrator, "Ada Ferrous", {Role::Administrator}, false, {}, "", true};
    all[1] = {kInspector,
              "Ilse Bröker",
              {Role::Inspector},
              false,
              {{Method::Magnetic, 2}, {Method::Penetrant, 2}, {Method::Ultrasonic, 2}},
              "",
              true};
    all[2] = {kLevel3,
              "Otto Sandmann",
              {Role::Inspector},
              false,
              {{Method::Magnetic, 3}, {Method::Penetrant, 3}},
              "",
              true};
    all[3] = {kQaManager, "Quentin Marsh", {Role::QaManager}, false, {}, "", true};
    all[4] = {kWorksManager, "Mara Ofen", {Role::QaManager}, true, {}, "", true};
    all[5] = {kThirdParty, "Thea Parley", {Role::ThirdParty}, false, {}, "First Buyer", true};
    all[6] = {kTrainee, "Timo Neu", {Role::Inspector}, false, {{Method::Magnetic, 1}}, "", true};
    all[7] = {kAuditor, "Aud Itur", {Role::Auditor}, false, {}, "", true};
    return all;
}

}  // namespace foundry
