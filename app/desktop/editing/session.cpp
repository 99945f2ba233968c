// SPDX-License-Identifier: Apache-2.0
#include "editing/session.h"

#include <QCoreApplication>
#include <QEvent>
#include <QSettings>
#include <algorithm>

namespace app {
namespace {

constexpr auto kIdleMinutes = "session/idle_minutes";

}  // namespace

Session::Session(ArchiveThread& archive, QObject* parent) : QObject(parent), archive_(archive) {
    idle_.setSingleShot(true);
    connect(&idle_, &QTimer::timeout, this, &Session::endUnattended);
    qApp->installEventFilter(this);
}

void Session::setArchive(const ArchiveThread::Opened& opened) {
    signer_.reset();
    idle_.stop();
    people_.clear();
    peopleKnown_ = false;
    onlyForReading_ = opened.onlyForReading.has_value();
    emit changed();
    reloadPeople();
}

void Session::reloadPeople() {
    archive_.ask(
        [](model::Archive& held) { return model::people(held); }, this,
        [this](model::Result<std::vector<model::Stored<model::Person>>> people) {
            // Where they cannot be read nobody enters anything under a typed name.
            peopleKnown_ = people.ok();
            trouble_ = people ? QString() : QString::fromStdString(people.error().message());
            people_ = people ? std::move(*people) : std::vector<model::Stored<model::Person>>();
            emit changed();
        });
}

bool Session::mayEnter() const {
    if (onlyForReading_ || !peopleKnown_) return false;
    return !hasPeople() || has(model::Role::Inspector);
}

QString Session::whyNot() const {
    if (mayEnter()) return {};
    if (!peopleKnown_) return trouble_;
    if (onlyForReading_) return tr("This archive is open only for reading.");
    if (!signer_) return tr("Only to read: sign in as an inspector to enter findings.");
    return tr("Only to read: %1 is not an inspector, and only inspectors enter findings.")
        .arg(QString::fromStdString(signer_->person().name));
}

void Session::signIn(const std::string& personId,
                     std::shared_ptr<const model::SecretBytes> passphrase, QObject* context,
                     std::function<void(model::Result<void>)> then) {
    archive_.ask([personId, passphrase = std::move(passphrase)](
                     model::Archive& held) { return model::signIn(held, personId, *passphrase); },
                 context,
                 [this, then = std::move(then)](model::Result<model::SignedIn> answer) {
                     if (!answer) {
                         then(answer.error());
                         return;
                     }
                     take(std::make_shared<const model::SignedIn>(std::move(*answer)));
                     then({});
                 });
}

void Session::take(Signer signer) {
    signer_ = std::move(signer);
    setIdleMinutes(idleMinutes());
    emit changed();
}

void Session::signOut() {
    if (!signer_) return;
    signer_.reset();
    idle_.stop();
    emit changed();
}

void Session::endUnattended() {
    if (!signer_) return;
    const QString name = QString::fromStdString(signer_->person().name);
    signOut();
    emit leftAlone(name);
}

int Session::idleMinutes() const {
    bool read = false;
    const int minutes = QSettings().value(kIdleMinutes).toInt(&read);
    return read && minutes >= 0 ? std::min(minutes, kLongestIdleMinutes) : kUsualIdleMinutes;
}

void Session::setIdleMinutes(int minutes) {
    const int kept = std::clamp(minutes, 0, kLongestIdleMinutes);
    QSettings().setValue(kIdleMinutes, kept);
    idle_.setInterval(kept * 60'000);
    if (signer_ && kept > 0) {
        idle_.start();
    } else {
        idle_.stop();
    }
}

bool Session::eventFilter(QObject*, QEvent* event) {
    switch (event->type()) {
        case QEvent::KeyPress:
        case QEvent::MouseButtonPress:
        case QEvent::MouseMove:
        case QEvent::Wheel:
        case QEvent::TouchBegin:
        case QEvent::TouchUpdate:
        case QEvent::TabletPress:
            if (idle_.isActive()) idle_.start();
            break;
        default:
            break;
    }
    return false;
}

}  // namespace app
