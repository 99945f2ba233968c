// SPDX-License-Identifier: Apache-2.0
// A test with what is to be said of its conditions, as it goes into a signed record. For the .cpp
// files of this folder only.
#pragma once

#include <optional>
#include <string>

#include "archive/connection.h"
#include "archive/test_validity.h"
#include "trust/canonical.h"

namespace model {

/// As the registers are now. `draft` is one of the examinations of `file`, or takes the place of
/// one.
Result<SignedTest> testNow(const Connection& connection, const CastingFile& file,
                           const ExaminationDraft& draft, const std::string& examiner);

/// Adds its members to what is signed of an examination.
void addTo(Canonical::Object& content, const SignedTest& test);
/// None where they are not understood.
std::optional<SignedTest> signedTestFrom(const Canonical& content);

}  // namespace model
