// SPDX-License-Identifier: Apache-2.0
// A casting of one zone that is examined by ultrasound alone.
#pragma once

#include "lifecycle_fixture.h"

namespace model {

class UltrasonicLifecycleTest : public LifecycleTest {
protected:
    static constexpr const char* kUltrasonicTable = "EN 12680-3:2003";

    /// Order O-1, part P-9 of spheroidal graphite iron and casting S-17; its zone Z1, 60 mm thick,
    /// requires UT at level 3.
    void ultrasonicOrder() {
        Order order = sampleOrder();
        order.forbiddenKinds.clear();
        ASSERT_THAT(archive_->save(order, 0, actor_), Succeeds());
        ASSERT_THAT(archive_->save(samplePart(), 0, actor_), Succeeds());
        PlannedZone zone;
        zone.name = "Z1";
        zone.width = millimetres(600);
        zone.height = millimetres(400);
        zone.thickness = millimetres(60);
        zone.tests = {{Method::Ultrasonic, Stage::HeatTreated, kUltrasonicTable, levels()}};
        ASSERT_THAT(archive_->add(ZonePlan{"P-9", 1, {zone}}, actor_), Succeeds());
        ASSERT_THAT(archive_->save(sampleCasting(), 0, actor_), Succeeds());
    }

    /// Of that test, with one small reflector that was read and one whose sizes were typed.
    [[nodiscard]] ExaminationDraft ultrasonicDraft() const {
        ExaminationDraft draft = this->draft();
        draft.header.method = Method::Ultrasonic;
        draft.header.stage = Stage::HeatTreated;
        draft.header.thickness = millimetres(60);
        draft.header.table = kUltrasonicTable;
        draft.header.levels = levels();
        draft.header.noIndications = false;
        draft.header.ultrasonic = {squareMillimetres(240'000),
                                   Testability{millimetres(3), decibels(20)},
                                   millimetres(10),
                                   {"from outside, straight", "from inside, straight"}};
        draft.settings = {setting()};
        TypedReflector read;
        read.id = "u1";
        read.x = "120,5";
        read.y = "80";
        read.setting = "S10";
        read.soundPath = "40";
        read.gain = "52";
        read.screen = "80";
        read.backWallLoss = "0";
        read.kind = "volumetric";
        TypedReflector typed;
        typed.id = "u2";
        typed.x = "300";
        typed.y = "80";
        typed.depth = "30";
        typed.fbh = "1.5";
        typed.backWallLoss = "0";
        typed.kind = "volumetric";
        draft.reflectors = {read, typed};
        return draft;
    }

private:
    static std::map<std::string, std::string> levels() { return {{"all", "3"}}; }
    static TypedSetting setting() {
        TypedSetting setting;
        setting.name = "S10";
        setting.probe = "S10-4, number 8";
        setting.kind = "straight";
        setting.element = "round";
        setting.diameter = "10";
        setting.frequency = "4";
        setting.velocity = "5600";
        setting.attenuation = "5";
        setting.thickness = "60";
        setting.surface = "flat";
        setting.reference = "back wall";
        setting.referencePath = "60";
        setting.referenceGain = "30";
        setting.referenceScreen = "80";
        return setting;
    }
};

}  // namespace model
