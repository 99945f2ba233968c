// SPDX-License-Identifier: Apache-2.0
// Makes the certificate of a casting as the archive holds it, off the screen's thread.
#pragma once

#include <QObject>
#include <memory>
#include <string>

#include "base/result.h"
#include "certificate/certificate.h"
#include "editing/archive_thread.h"

class QThread;

namespace app {

/// The verdict, the document and the PDF, written to `path` whole or not at all. Fails with the
/// reason of whichever step fails.
model::Result<void> writeCertificate(const model::CastingFile& file, const model::TableSet& tables,
                                     const reports::Issue& issue, const std::string& path);

class CertificateJob : public QObject {
    Q_OBJECT

public:
    explicit CertificateJob(QObject* parent = nullptr);
    ~CertificateJob() override;

    /// One at a time: ignored while running(). The head of the archive's history is put in.
    void start(ArchiveThread& archive, std::shared_ptr<const model::TableSet> tables,
               const std::string& serial, reports::Issue issue, const std::string& path);
    [[nodiscard]] bool running() const { return running_; }

signals:
    void written(const QString& path);
    void failed(const model::Error& error);

private:
    void finish(const model::Result<void>& result, const std::string& path);

    bool running_ = false;
    std::unique_ptr<QThread> thread_;
};

}  // namespace app
