// SPDX-License-Identifier: Apache-2.0
// The part of the busy archive that says all that a record can hold: terms, conditions, registers.
#include "archive/attestation.h"
#include "busy_archive.h"
#include "foundry/register_entries.h"

namespace app {

void BusyArchive::keepRegisters() {
    auto order = must(archive_.order("O-9"));
    order.value.terms = foundry::filledTerms();
    must(archive_.save(order.value, order.version, actor_));
    auto part = must(archive_.part("P-9"));
    part.value.pattern = "M 12";
    part.value.mass = "1 250 kg";
    must(archive_.save(part.value, part.version, actor_));
    model::ZonePlan plan = must(archive_.zonePlan("P-9", 1));
    plan.revision = 2;
    for (model::PlannedZone& zone : plan.zones) {
        zone.drawingMinimum = model::millimetres(38);
        zone.otherTests = {"radiographic", "visual"};
    }
    must(archive_.add(plan, actor_));
    for (const char* serial : {"Q-8", "Q-9"}) {
        auto casting = must(archive_.castingEntry(serial));
        casting.value.series = "Q-91, Q-92";
        casting.value.marking = "H 9 cast on";
        casting.value.conditionOnReceipt = "blasted";
        must(archive_.save(casting.value, casting.version, actor_));
        for (model::ExaminationDraft draft : must(archive_.casting(serial)).examinations) {
            draft.conditions = foundry::filledConditions();
            draft.conditions.place = "bench " + std::to_string(draft.id);
            must(archive_.save(draft, actor_));
        }
    }
    const auto level3 = person(foundry::kLevel3);
    const auto qaManager = person(foundry::kQaManager);
    if (const auto error =
            foundry::fillRegisters(archive_, "Q-9", "a photo", actor_, level3, qaManager))
        throw std::runtime_error(error->message());
    auto yoke = must(model::entries<model::Equipment>(archive_)).front();
    yoke.value.remarks = "lent out";
    must(model::saveEntry(archive_, yoke.value, yoke.version, actor_));
    const auto tables = must(archive_.tables());
    for (const char* id : {"EN 1369:1996", "ASTM A903/A903M-99 MT"}) {
        const std::string& digest = tables.find(id)->digest;
        must(model::attest(archive_, digest, "library copy 4", qaManager));
        must(model::withdrawAttestation(archive_, digest, "of another edition", qaManager));
    }
}

void BusyArchive::stateSeries(const std::string& serial, const std::string& series) {
    auto casting = must(archive_.castingEntry(serial));
    casting.value.series = series;
    must(archive_.save(casting.value, casting.version, actor_));
}

}  // namespace app
