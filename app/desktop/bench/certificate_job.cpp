// SPDX-License-Identifier: Apache-2.0
#include "bench/certificate_job.h"

#include <QThread>

#include "judge/judge.h"
#include "pdf/render.h"
#include "pdf/write_file.h"

namespace app {

model::Result<void> writeCertificate(const model::CastingFile& file, const model::TableSet& tables,
                                     const reports::Issue& issue, const std::string& path) {
    const auto sheet = model::sheetOf(file);
    if (!sheet) return sheet.error();
    const auto verdict = model::judge(*sheet, tables);
    if (!verdict) return verdict.error();
    const auto document = reports::certificateOf({file, *verdict, tables, issue});
    if (!document) return document.error();
    const auto pdf = reports::renderPdf(*document);
    if (!pdf) return pdf.error();
    return reports::writeFile(path, pdf->bytes);
}

CertificateJob::CertificateJob(QObject* parent) : QObject(parent) {}

CertificateJob::~CertificateJob() {
    if (thread_) thread_->wait();
}

void CertificateJob::start(ArchiveThread& archive, std::shared_ptr<const model::TableSet> tables,
                           const std::string& serial, reports::Issue issue,
                           const std::string& path) {
    if (running_) return;
    running_ = true;
    struct Stored {
        model::CastingFile file;
        model::Head head;
    };
    archive.ask(
        [serial](model::Archive& held) -> model::Result<Stored> {
            auto file = held.casting(serial);
            if (!file) return file.error();
            auto head = held.head();
            if (!head) return head.error();
            return Stored{std::move(*file), *head};
        },
        this,
        [this, tables = std::move(tables), issue = std::move(issue),
         path](model::Result<Stored> stored) mutable {
            if (!stored) {
                finish(stored.error(), path);
                return;
            }
            issue.historyHead = model::toText(stored->head);
            if (thread_) thread_->wait();
            thread_.reset(
                QThread::create([this, tables, issue, path, file = std::move(stored->file)] {
                    auto result = writeCertificate(file, *tables, issue, path);
                    QMetaObject::invokeMethod(
                        this, [this, result = std::move(result), path] { finish(result, path); },
                        Qt::QueuedConnection);
                }));
            thread_->start();
        });
}

void CertificateJob::finish(const model::Result<void>& result, const std::string& path) {
    running_ = false;
    if (result) {
        emit written(QString::fromStdString(path));
    } else {
        emit failed(result.error());
    }
}

}  // namespace app
