// SPDX-License-Identifier: Apache-2.0
// A certificate on an ultrasonic examination, exported with what was read.
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "exporting/export_certificate.h"
#include "exporting/readings_json.h"
#include "ultrasonic_fixture.h"

namespace app {
namespace {

using model::FailsWith;
using model::Succeeds;
using testing::HasSubstr;
using testing::UnorderedElementsAre;

class ExportedReadings : public model::UltrasonicLifecycleTest {
protected:
    /// Presents what was signed, by the attested table, and releases it; the folder of its export.
    std::string exported(const char* table) {
        const auto tables = archive_->tables();
        EXPECT_THAT(model::attest(*archive_, tables->find(table)->digest, "copy 1", qaManager_),
                    Succeeds());
        const std::int64_t number = present();
        EXPECT_THAT(release(number, qaManager_), Succeeds());
        EXPECT_THAT(exportCertificate(*archive_, number, pathOf("out")), Succeeds());
        return pathOf("out");
    }
    static std::string textOf(const std::string& path) {
        std::ifstream file(path, std::ios::binary);
        std::stringstream text;
        text << file.rdbuf();
        return text.str();
    }
    static std::vector<std::string> namesIn(const std::string& folder) {
        std::vector<std::string> names;
        for (const auto& entry : std::filesystem::directory_iterator(folder))
            names.push_back(entry.path().filename().string());
        return names;
    }
};

TEST_F(ExportedReadings, StandBesideTheRecord) {
    ultrasonicOrder();
    sign(save(ultrasonicDraft()));
    const std::string folder = exported(kUltrasonicTable);
    EXPECT_THAT(
        namesIn(folder),
        UnorderedElementsAre("certificate-1.pdf", "certificate-1.json", "sheet.json",
                             "verdict.json", "indications.csv", "checks.csv", "readings.json",
                             "settings.csv", "readings.csv", "record.json", "records.csv",
                             "conditions.csv", "registers.csv", "SHA256SUMS"));
    // coreutils' sha256sum, as an auditor would.
    EXPECT_EQ(std::system(("cd '" + folder + "' && sha256sum --quiet -c SHA256SUMS && test " +
                           "$(wc -l < SHA256SUMS) = 13")
                              .c_str()),
              0);

    const auto document = nlohmann::json::parse(textOf(folder + "/readings.json"));
    EXPECT_EQ(document["format"], "fettlemark-readings/1");
    const auto& examination = document["examinations"][0];
    EXPECT_EQ(examination["zone"], "Z1");
    EXPECT_EQ(examination["method"], "UT");
    EXPECT_EQ(examination["settings"][0]["probe"], "S10-4, number 8");
    EXPECT_EQ(examination["readings"][0]["typed"]["x"], "120,5");
    EXPECT_EQ(examination["readings"][0]["size"]["depth_mm"], 40);
    EXPECT_EQ(examination["readings"][0]["size"]["fbh_method"], "distance-gain-size");
    EXPECT_EQ(examination["readings"][1]["typed"]["fbh"], "1.5");
    EXPECT_TRUE(examination["readings"][1]["size"].is_null());

    EXPECT_THAT(textOf(folder + "/settings.csv"),
                HasSubstr("\r\nZ1,UT,heat treated,0,0,S10,mm,\"S10-4, number 8\",straight,round,"));
    EXPECT_THAT(textOf(folder + "/readings.csv"),
                HasSubstr("\r\nZ1,UT,heat treated,0,0,u1,mm,\"120,5\",80,,S10,40,52,80,"));
    EXPECT_THAT(textOf(folder + "/indications.csv"),
                HasSubstr("\r\nZ1,UT,heat treated,0,0,u2,300,80,"));
}

TEST_F(ExportedReadings, AreNotThereWithoutAnUltrasonicExamination) {
    order();
    const std::int64_t record = sign(save(draft("2")));
    const auto readings = readingsJson(*archive_, {record});
    ASSERT_THAT(readings, Succeeds());
    EXPECT_FALSE(readings->has_value());
    EXPECT_THAT(
        namesIn(exported("EN 1369:2012")),
        UnorderedElementsAre("certificate-1.pdf", "certificate-1.json", "sheet.json",
                             "verdict.json", "indications.csv", "checks.csv", "record.json",
                             "records.csv", "conditions.csv", "registers.csv", "SHA256SUMS"));
    EXPECT_THAT(exportCertificate(*archive_, 1, pathOf("out")), FailsWith(model::ErrorKind::Input));
}

}  // namespace
}  // namespace app
