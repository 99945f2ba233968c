// SPDX-License-Identifier: Apache-2.0
#include "editing/archive_thread.h"

#include <QThread>

#include "limits/table_set.h"

namespace app {
namespace {

/// Of a damaged archive the program's own tables where its own cannot be read.
model::Result<model::TableSet> tablesOf(const model::Archive& archive, bool damaged) {
    auto tables = archive.tables();
    if (tables || !damaged) return tables;
    return model::TableSet::shipped();
}

}  // namespace

ArchiveThread::ArchiveThread(QObject* parent) : QObject(parent) {
    patience_.setSingleShot(true);
    patience_.setInterval(200);
    connect(&patience_, &QTimer::timeout, this, [this] {
        shownBusy_ = true;
        emit busy(true);
    });
    thread_.reset(QThread::create([this] { run(); }));
    thread_->start();
}

ArchiveThread::~ArchiveThread() {
    {
        const std::lock_guard lock(mutex_);
        stop_ = true;
    }
    wake_.notify_one();
    thread_->wait();
}

void ArchiveThread::run() {
    std::optional<model::Archive> archive;
    while (true) {
        Job job;
        {
            std::unique_lock lock(mutex_);
            wake_.wait(lock, [this] { return stop_ || !jobs_.empty(); });
            if (jobs_.empty()) return;
            job = std::move(jobs_.front());
            jobs_.pop_front();
        }
        job(archive);
    }
}

void ArchiveThread::post(Job job) {
    if (outstanding_++ == 0) patience_.start();
    {
        const std::lock_guard lock(mutex_);
        jobs_.push_back(std::move(job));
    }
    wake_.notify_one();
}

void ArchiveThread::reply(std::function<void()> answer) {
    QMetaObject::invokeMethod(
        this,
        [this, answer = std::move(answer)] {
            if (--outstanding_ == 0) {
                patience_.stop();
                if (std::exchange(shownBusy_, false)) emit busy(false);
            }
            answer();
        },
        Qt::QueuedConnection);
}

void ArchiveThread::open(const std::string& path, QObject* context,
                         std::function<void(model::Result<Opened>)> then,
                         std::function<model::Result<void>()> prepare) {
    const auto work = [path, prepare = std::move(prepare)](
                          std::optional<model::Archive>& archive) -> model::Result<Opened> {
        if (prepare) {
            if (auto prepared = prepare(); !prepared) return prepared.error();
        }
        std::optional<model::Error> onlyForReading;
        auto opened = model::Archive::open(path);
        if (!opened && opened.error().kind != model::ErrorKind::Input) {
            onlyForReading = opened.error();
            opened = model::Archive::openForReading(path);
        }
        if (!opened) return onlyForReading ? *onlyForReading : opened.error();
        auto tables = tablesOf(*opened, onlyForReading.has_value());
        if (!tables) return tables.error();
        archive.emplace(std::move(*opened));
        return Opened{archive->path(), archive->kind(),
                      std::make_shared<const model::TableSet>(std::move(*tables)), onlyForReading};
    };
    post([this, work, guard = QPointer<QObject>(context),
          then = std::move(then)](std::optional<model::Archive>& archive) {
        auto answer = std::make_shared<model::Result<Opened>>(work(archive));
        reply([guard, then, answer] {
            if (guard) then(std::move(*answer));
        });
    });
}

}  // namespace app
