// SPDX-License-Identifier: Apache-2.0
// A casting of an invented foundry with every situation that a certificate must show, and the
// verdict on it written by hand, so that the certificate's tests do not lean on the engine.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "certificate/certificate.h"
#include "conditions/validity.h"

namespace sample {

/// File, verdict and tables of one certificate; input() borrows from it.
struct Sample {
    model::CastingFile file;
    model::Verdict verdict;
    model::TableSet tables;
    reports::Issue issue;
    std::vector<reports::Recorded> records;
    std::vector<std::vector<model::ConditionFinding>> findings{};
    std::map<std::string, std::string> pictures{};

    [[nodiscard]] reports::CertificateInput input() const {
        return {file, verdict, tables, issue, records, findings, &pictures};
    }
};

/// The table that the samples are judged by: "Trial Standard 7:2020" revision 3.
model::LimitTable trialTable();

model::TypedIndication typed(std::string id, std::string x, std::string y, std::string length,
                             std::string width);

/// Five planned zones:
/// Z1 MT fails: a cumulative length in a frame that reaches into Z2, one indication not relevant,
///    one below the threshold, one typed in inch, a group, and a part not examined;
/// Z2 MT on the same surface as Z1 passes;
/// Z3 PT: no indications found;
/// Z4 PT: a check that could not be made;
/// Z5 MT required, not examined;
/// and Z9, not in the plan, examined after a repair: acceptable.
Sample mixedCasting();

/// One zone, nothing found, acceptable, everything made as required and attested.
Sample soundCasting();

/// soundCasting() with a repeat of its examination, every examination signed, ready for release.
Sample signedCasting();

/// soundCasting() with a second zone, examined by UT: one indication read with a probe on a block,
/// one typed with a dimension that is not measurable, one not measured at all.
Sample ultrasonicCasting();

/// Three zones by MT, UT and PT of a series of two, ready for release as type 3.2, with everything
/// recorded: order, conditions, equipment, people, results of others, a photo (whose bytes only
/// begin as a picture's do).
Sample recordedCasting();

/// recordedCasting() after NCR-41 in Z1 was excavated, welded, heat treated and examined again.
Sample repairedCasting();

/// recordedCasting() of which Z1 fails, with a concession for its indication.
Sample concededCasting();

/// `zones` zones with `indications` each, for page counts and timing.
Sample largeCasting(int zones, int indications);

}  // namespace sample
