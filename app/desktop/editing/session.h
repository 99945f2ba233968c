// SPDX-License-Identifier: Apache-2.0
// Who works at this window: the person who has signed in, until they sign out or leave it alone.
// No widget.
#pragma once

#include <QObject>
#include <QTimer>
#include <functional>
#include <memory>
#include <vector>

#include "archive/people.h"
#include "archive/sign_in.h"
#include "editing/archive_thread.h"

namespace app {

/// Shared with the jobs that sign; the key is wiped when the last of them is done.
using Signer = std::shared_ptr<const model::SignedIn>;

class Session : public QObject {
    Q_OBJECT

public:
    /// `archive` outlives the session.
    explicit Session(ArchiveThread& archive, QObject* parent = nullptr);

    /// Another archive is open: nobody is signed in, and its people are asked for.
    void setArchive(const ArchiveThread::Opened& opened);
    /// Asks again who belongs to the archive; `changed` follows.
    void reloadPeople();

    [[nodiscard]] const std::vector<model::Stored<model::Person>>& people() const {
        return people_;
    }
    /// The archive has answered who its people are.
    [[nodiscard]] bool peopleKnown() const { return peopleKnown_; }
    [[nodiscard]] bool hasPeople() const { return !people_.empty(); }

    [[nodiscard]] const Signer& signer() const { return signer_; }
    [[nodiscard]] const model::Person* person() const {
        return signer_ ? &signer_->person() : nullptr;
    }
    [[nodiscard]] bool has(model::Role role) const { return signer_ && signer_->has(role); }
    [[nodiscard]] bool onlyForReading() const { return onlyForReading_; }

    /// Whether findings may be entered now: by anybody while the archive has no people, else by an
    /// inspector who has signed in. Where not, `whyNot` says what to do.
    [[nodiscard]] bool mayEnter() const;
    [[nodiscard]] QString whyNot() const;

    /// Unlocks the person's key away from the window's thread. Nobody is signed in, and `then` not
    /// called, where `context` is gone by then.
    void signIn(const std::string& personId, std::shared_ptr<const model::SecretBytes> passphrase,
                QObject* context, std::function<void(model::Result<void>)> then);
    /// Whoever has proved who they are works here from now on.
    void take(Signer signer);
    void signOut();

    /// After so many minutes without a key or the mouse the person is signed out; 0: never.
    [[nodiscard]] int idleMinutes() const;
    void setIdleMinutes(int minutes);
    static constexpr int kUsualIdleMinutes = 15;
    static constexpr int kLongestIdleMinutes = 480;

    /// What happens when nobody has touched anything for that long.
    void endUnattended();
    /// What is left of that time, in milliseconds; -1: it does not run.
    [[nodiscard]] int idleLeft() const { return idle_.remainingTime(); }

    /// Sees keys and the mouse of the whole program.
    bool eventFilter(QObject* watched, QEvent* event) override;

signals:
    /// Who is signed in, or who could.
    void changed();
    /// Signed out because nobody touched anything; `name` is who was.
    void leftAlone(const QString& name);

private:
    ArchiveThread& archive_;
    std::vector<model::Stored<model::Person>> people_;
    bool peopleKnown_ = false;
    QString trouble_;  ///< why the people are not known
    bool onlyForReading_ = false;
    Signer signer_;
    QTimer idle_;
};

}  // namespace app
