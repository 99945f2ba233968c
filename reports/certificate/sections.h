// SPDX-License-Identifier: Apache-2.0
// The chapters of a certificate; each appends its blocks.
#pragma once

#include <vector>

#include "certificate/document.h"
#include "certificate/examined.h"

namespace reports {

/// Result, casting and order, criteria, repairs and scope: what a reader finds on the first page.
void addFirstPage(std::vector<Block>& blocks, const CertificateInput& input,
                  const std::vector<Examined>& all);

void addZones(std::vector<Block>& blocks, const CertificateInput& input,
              const std::vector<Examined>& all);

void addExaminations(std::vector<Block>& blocks, const CertificateInput& input,
                     const std::vector<Examined>& all);

/// Limit tables, rules of decision, people, and what the document says and does not say.
void addClosing(std::vector<Block>& blocks, const CertificateInput& input,
                const std::vector<Examined>& all);

/// What the signatures prove, and the places for those that an EN 10204 type needs.
void addSignatures(std::vector<Block>& blocks, const std::string& type);

}  // namespace reports
