// SPDX-License-Identifier: Apache-2.0
// The chapters of a certificate; each appends its blocks.
#pragma once

#include <vector>

#include "certificate/conclusion.h"
#include "certificate/document.h"
#include "certificate/examined.h"

namespace reports {

/// Result, casting and order, criteria, repairs and scope: what a reader finds on the first page.
void addFirstPage(std::vector<Block>& blocks, const CertificateInput& input,
                  const std::vector<Examined>& all, const Conclusion& conclusion);
void addCasting(std::vector<Block>& blocks, const CertificateInput& input);
/// What is optional of casting and order; nothing where none of it is recorded.
void addFurtherData(std::vector<Block>& blocks, const CertificateInput& input);
/// The serial numbers that the casting stands for, its own first or where the list has it.
std::vector<std::string> serialsOf(const model::Casting& casting);

void addZones(std::vector<Block>& blocks, const CertificateInput& input,
              const std::vector<Examined>& all);

void addExaminations(std::vector<Block>& blocks, const CertificateInput& input,
                     const std::vector<Examined>& all);

/// Every nonconformance, entry by entry; nothing where there is none.
void addRepairs(std::vector<Block>& blocks, const Conclusion& conclusion);
void addOtherTests(std::vector<Block>& blocks, const model::CastingFile& file);
/// The attachments that are to be printed. Fails where one's file is not at hand or another one.
model::Result<void> addPhotos(std::vector<Block>& blocks, const CertificateInput& input);

void addEquipment(std::vector<Block>& blocks, const CertificateInput& input,
                  const std::vector<Examined>& all);
void addPeople(std::vector<Block>& blocks, const CertificateInput& input,
               const std::vector<Examined>& all);
/// Every file that belongs to the casting, by number, revision and SHA-256.
void addAttachments(std::vector<Block>& blocks, const model::CastingFile& file);

/// Limit tables, rules of decision, people, and what the document says and does not say.
void addClosing(std::vector<Block>& blocks, const CertificateInput& input,
                const std::vector<Examined>& all);

/// What the signatures prove, and the places for those that an EN 10204 type needs.
void addSignatures(std::vector<Block>& blocks, const std::string& type);

}  // namespace reports
