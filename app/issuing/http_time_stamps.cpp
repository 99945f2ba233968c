// SPDX-License-Identifier: Apache-2.0
#include "issuing/http_time_stamps.h"

#include <QEventLoop>
#include <QNetworkAccessManager>
#include <QNetworkReply>
#include <QNetworkRequest>
#include <QUrl>

namespace app {
namespace {

constexpr qint64 kLargestAnswer = 262'144;

model::Error failed(const QUrl& url, const std::string& why) {
    return model::refusal(url.toString().toStdString(), "the time-stamp service failed: %1", {why});
}

QNetworkRequest requestTo(const QUrl& url, std::chrono::milliseconds patience) {
    QNetworkRequest request(url);
    request.setHeader(QNetworkRequest::ContentTypeHeader, "application/timestamp-query");
    request.setRawHeader("Accept", "application/timestamp-reply");
    request.setAttribute(QNetworkRequest::RedirectPolicyAttribute,
                         QNetworkRequest::ManualRedirectPolicy);
    request.setTransferTimeout(static_cast<int>(patience.count()));
    return request;
}

model::Result<std::string> ask(const QUrl& url, std::chrono::milliseconds patience,
                               const std::string& question) {
    QNetworkAccessManager network;
    const std::unique_ptr<QNetworkReply> reply(
        network.post(requestTo(url, patience), QByteArray::fromStdString(question)));
    QEventLoop waiting;
    QObject::connect(reply.get(), &QNetworkReply::finished, &waiting, &QEventLoop::quit);
    QObject::connect(reply.get(), &QNetworkReply::downloadProgress, reply.get(),
                     [&reply](qint64 received, qint64) {
                         if (received > kLargestAnswer) reply->abort();
                     });
    if (!reply->isFinished()) waiting.exec();

    if (reply->error() == QNetworkReply::OperationCanceledError)
        return failed(url, reply->bytesAvailable() > kLargestAnswer ? "its answer is too long"
                                                                    : "it did not answer in time");
    if (reply->error() != QNetworkReply::NoError)
        return failed(url, reply->errorString().toStdString());
    const int status = reply->attribute(QNetworkRequest::HttpStatusCodeAttribute).toInt();
    if (status != 200) return failed(url, "it answers with HTTP status " + std::to_string(status));
    const QString type = reply->header(QNetworkRequest::ContentTypeHeader).toString();
    if (!type.startsWith("application/timestamp-reply"))
        return failed(url, "its answer is no time stamp but \"" + type.toStdString() + "\"");
    return reply->readAll().toStdString();
}

}  // namespace

model::Result<std::unique_ptr<model::TimeStampService>> httpTimeStamps(
    const std::string& url, std::chrono::milliseconds patience) {
    const QUrl address(QString::fromStdString(url), QUrl::StrictMode);
    const bool carried = address.scheme() == "http" || address.scheme() == "https";
    if (!address.isValid() || !carried || address.host().isEmpty())
        return model::inputError(url, "is no http or https address of a time-stamp service");
    if (!address.userInfo().isEmpty())
        return model::inputError("time-stamp service",
                                 "its address must not carry a name or password");
    return std::unique_ptr<model::TimeStampService>(
        std::make_unique<model::Rfc3161Service>([address, patience](const std::string& question) {
            return ask(address, patience, question);
        }));
}

}  // namespace app
