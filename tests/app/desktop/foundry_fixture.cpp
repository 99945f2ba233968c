// SPDX-License-Identifier: Apache-2.0
#include "foundry_fixture.h"

#include <QTest>

namespace app {
namespace {

const model::Actor kOffice{"Office"};

model::PlannedZone zone(const std::string& name, int x, model::RequiredTest test) {
    model::PlannedZone zone;
    zone.name = name;
    zone.description = "Face " + name;
    zone.width = model::millimetres(400);
    zone.height = model::millimetres(300);
    zone.thickness = model::millimetres(40);
    model::SurfacePlace place;
    place.id = test.method == model::Method::Magnetic ? "S1" : "S2";
    place.placement.x = model::millimetres(x);
    place.width = zone.width;
    place.height = zone.height;
    zone.surface = place;
    zone.tests = {std::move(test)};
    return zone;
}

}  // namespace

model::CastingFile sampleFile() {
    const model::RequiredTest magnetic{
        model::Method::Magnetic,
        model::Stage::AsCast,
        "EN 1369:2012",
        {{"non-linear", "SM 2"}, {"linear", "LM 4"}, {"aligned", "AM 4"}}};
    const model::RequiredTest penetrant{
        model::Method::Penetrant,
        model::Stage::FinishMachined,
        "EN 1371-1:2011",
        {{"isolated", "SP 2"}, {"clustered", "CP 2"}, {"linear", "LP 2"}, {"aligned", "AP 2"}}};
    model::CastingFile file;
    file.order.number = "O-1";
    file.order.customer = "Buyer";
    file.order.certificateType = "3.1";
    file.order.language = "en";
    file.part.number = "P-1";
    file.part.description = "Bracket";
    file.plan.part = "P-1";
    file.plan.zones = {zone("Z1", 0, magnetic), zone("Z2", 400, magnetic),
                       zone("Z3", 0, penetrant)};
    file.casting = {"C-1", "H-1", "O-1", "P-1", 1};
    return file;
}

model::TypedIndication row(const std::string& id, const std::string& x, const std::string& y,
                           const std::string& length, const std::string& width) {
    model::TypedIndication typed;
    typed.id = id;
    typed.x = x;
    typed.y = y;
    typed.length = length;
    typed.width = width;
    return typed;
}

bool eventually(const std::function<bool()>& condition) {
    return QTest::qWaitFor(condition, 5000);
}

FoundryTest::FoundryTest(const model::CastingFile& file) {
    auto archive =
        model::Archive::create(path().toStdString(), model::ArchiveKind::Working, kOffice);
    EXPECT_TRUE(archive) << archive.error().message();
    EXPECT_TRUE(archive->save(file.order, 0, kOffice));
    EXPECT_TRUE(archive->save(file.part, 0, kOffice));
    EXPECT_TRUE(archive->add(file.plan, kOffice));
    EXPECT_TRUE(archive->save(file.casting, 0, kOffice));
}

model::Archive FoundryTest::openAgain() const {
    auto archive = model::Archive::open(path().toStdString());
    EXPECT_TRUE(archive) << archive.error().message();
    return std::move(*archive);
}

model::CastingFile FoundryTest::stored() const {
    auto file = openAgain().casting("C-1");
    EXPECT_TRUE(file) << file.error().message();
    return std::move(*file);
}

}  // namespace app
