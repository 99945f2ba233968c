// SPDX-License-Identifier: Apache-2.0
// A casting of one zone on the way from draft to certificate, with the people who take it there.
#pragma once

#include <string>
#include <vector>

#include "archive/attestation.h"
#include "archive/lifecycle.h"
#include "foundry_fixture.h"

namespace model {

class LifecycleTest : public FoundryTest {
protected:
    LifecycleTest()
        : inspector_(signedIn(foundry::kInspector)),
          level3_(signedIn(foundry::kLevel3)),
          qaManager_(signedIn(foundry::kQaManager)),
          thirdParty_(signedIn(foundry::kThirdParty)) {}

    /// Order O-1 of this certificate type, part P-9, casting S-17; its one zone Z1 requires MT by
    /// EN 1369:2012 at SM 2, LM 4, AM 4.
    void order(const std::string& certificateType = "3.1");
    /// A draft of that test with nothing found, or with one linear indication of this length.
    ExaminationDraft draft(const std::string& length = "") const;
    /// Stores a draft; its id.
    std::int64_t save(const ExaminationDraft& draft);
    /// Signs a stored draft by the inspector or another; the record's id.
    std::int64_t sign(std::int64_t draftId) { return sign(draftId, inspector_); }
    std::int64_t sign(std::int64_t draftId, const SignedIn& by);
    void attestTable();
    /// order(), draft(), sign() and attestTable().
    void signedCasting(const std::string& certificateType = "3.1", const std::string& length = "");
    /// prepare() and present() by the inspector; the number.
    std::int64_t present();
    /// present() after signedCasting().
    std::int64_t presentedCasting(const std::string& certificateType = "3.1",
                                  const std::string& length = "");
    /// A person of the foundry with their roles changed, signed in.
    SignedIn withRoles(const std::string& personId, const std::set<Role>& roles);

    [[nodiscard]] Result<void> release(std::int64_t number, const SignedIn& by) {
        return model::release(*archive_, number, releasedPdf(number), by);
    }
    [[nodiscard]] std::string presentedPdf() const { return "%PDF-1.7 signed by the inspector\n"; }
    /// The presented file, with one signature more.
    [[nodiscard]] std::string followingPdf(std::int64_t number, const std::string& by) const;
    [[nodiscard]] std::string endorsedPdf(std::int64_t number) const {
        return followingPdf(number, "third party");
    }
    [[nodiscard]] std::string releasedPdf(std::int64_t number) const {
        return followingPdf(number, "QA manager");
    }
    [[nodiscard]] std::vector<Obstacle::Kind> obstacleKinds(std::int64_t number,
                                                            const SignedIn& by) const;
    [[nodiscard]] std::size_t filesStored() const;

    SignedIn inspector_;
    SignedIn level3_;
    SignedIn qaManager_;
    SignedIn thirdParty_;
};

}  // namespace model
