// SPDX-License-Identifier: Apache-2.0
#include "editing/works.h"

#include <QCoreApplication>
#include <QSettings>

#include "issuing/http_time_stamps.h"

namespace app {
namespace {

constexpr auto kName = "works/name";
constexpr auto kAddress = "works/address";
constexpr auto kPlace = "works/place";
constexpr auto kTimeStamps = "works/time_stamps";

}  // namespace

Works worksOf(model::ArchiveKind kind) {
    if (kind == model::ArchiveKind::Demonstration) {
        return {"Quillmere Foundry", "Lock Street 3, Quillmere", "Quillmere", ""};
    }
    const QSettings settings;
    const auto text = [&](const char* key) {
        return settings.value(key).toString().trimmed().toStdString();
    };
    return {text(kName), text(kAddress), text(kPlace), text(kTimeStamps)};
}

void keep(const Works& works) {
    QSettings settings;
    settings.setValue(kName, QString::fromStdString(works.name));
    settings.setValue(kAddress, QString::fromStdString(works.address));
    settings.setValue(kPlace, QString::fromStdString(works.place));
    settings.setValue(kTimeStamps, QString::fromStdString(works.timeStamps));
}

model::Result<std::shared_ptr<const IssueMeans>> IssueMeans::make(const Works& works) {
    auto means = std::make_shared<IssueMeans>();
    means->settings_.worksName = works.name;
    means->settings_.worksAddress = works.address;
    means->settings_.place = works.place;
    means->settings_.programVersion = QCoreApplication::applicationVersion().toStdString();
    if (!works.timeStamps.empty()) {
        auto service = httpTimeStamps(works.timeStamps);
        if (!service) return service.error();
        means->timeStamps_ = std::move(*service);
        means->settings_.timeStamps = means->timeStamps_.get();
    }
    return std::shared_ptr<const IssueMeans>(std::move(means));
}

}  // namespace app
