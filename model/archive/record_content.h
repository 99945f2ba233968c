// SPDX-License-Identifier: Apache-2.0
// What a signature on an examination covers; its keys are listed in HISTORY.md. For the .cpp files
// of this folder only.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "archive/casting_store.h"
#include "archive/signed_record.h"
#include "archive/test_validity.h"
#include "judge/verdict.h"
#include "trust/canonical.h"

namespace model {

/// An examination about to be signed.
struct SignedContent {
    const StoredCasting& casting;
    const ExaminationDraft& draft;
    const ExaminationVerdict& verdict;        ///< as judged, before a rejection
    const std::vector<std::int64_t>& beside;  ///< ids of the examinations it was judged with
    const SignedTest& test;                   ///< under what conditions it was made
    int revision = 1;
    std::string rejection;  ///< empty: none
    const Person& inspector;
};

Canonical::Object canonicalOf(const SignedContent& content);

/// The version of this program, which is part of what is signed.
std::string programVersion();

}  // namespace model
