// SPDX-License-Identifier: Apache-2.0
// The bench on a casting of spheroidal graphite iron with one zone, 300 x 200 mm and 60 mm thick,
// to be tested by UT to EN 12680-3:2003, level 2.
#pragma once

#include <utility>
#include <vector>

#include "bench/examination_pane.h"
#include "bench_fixture.h"
#include "fields/field_form.h"
#include "ultrasonic_bench/coverage_page.h"
#include "ultrasonic_bench/reading_page.h"
#include "ultrasonic_bench/reading_result.h"
#include "ultrasonic_bench/setting_page.h"

namespace app {

model::CastingFile ultrasonicFile();

/// Contract names and what is typed or chosen there.
using Entries = std::vector<std::pair<std::string, QString>>;
/// A straight-beam probe of 10 mm and 2.5 MHz on steel of 5900 m/s, against a hole of 2 mm at
/// 200 mm in a block; the wall is 300 mm thick.
Entries straightSetting();

class UltrasonicTest : public BenchTest {
protected:
    UltrasonicTest();

    /// Makes a setting and types it, by keys.
    void typeSetting(const Entries& entries);
    void typeReading(const Entries& entries);
    /// Types into the field, without leaving it.
    static void typeInto(FieldForm& form, const std::string& field, const QString& text);

    ExaminationPane& pane() { return bench().examination(); }
    ReadingPage& reading() { return pane().reading(); }
    [[nodiscard]] const std::vector<model::TypedReflector>& reflectors() {
        return editor().draft(0).reflectors;
    }
    [[nodiscard]] const std::vector<model::TypedSetting>& settings() {
        return editor().draft(0).settings;
    }
    QString fieldError(const std::string& field) {
        return reading().form().error(reading().form().find(field));
    }
};

}  // namespace app
