// SPDX-License-Identifier: Apache-2.0
#include "record/typed_reflector.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

#include "limits/words.h"
#include "record/row_fields.h"

namespace model {
namespace {

/// Half-up to 0.001 mm. None where there is no such length, as unknown is never acceptable.
std::optional<Length> rounded(const std::optional<double>& mm) {
    constexpr double kLargestMm = 1e6;
    if (!mm || !std::isfinite(*mm) || std::abs(*mm) > kLargestMm) return std::nullopt;
    return nanometres(1000 * static_cast<std::int64_t>(std::floor(*mm * 1000 + 0.5)));
}

/// The same of what is more than 0 and does not become 0 by rounding.
std::optional<Length> roundedSize(const std::optional<double>& mm) {
    const auto length = rounded(mm);
    if (!length) return std::nullopt;
    return std::max(*length, nanometres(1000));
}

class ReflectorReader {
public:
    ReflectorReader(const TypedReflector& row, const std::vector<TypedSetting>& settings)
        : row_(row), settings_(settings), fields_(row.unit) {}

    ReadReflector read() {
        reflector_.id = row_.id;
        fields_.require("id", row_.id);
        readPlace();
        readSizes();
        readNotMeasurable();
        readWords();
        if (hasReading(row_)) size_ = sized();
        if (size_) takeSize();
        takeHeading();
        checkWidth();
        ReadReflector result;
        if (fields_.sound()) result.value = std::move(reflector_);
        result.size = std::move(size_);
        result.errors = fields_.take();
        return result;
    }

private:
    void readPlace() {
        for (auto [field, text, target] : {std::tuple{"x_mm", &row_.x, &reflector_.x},
                                           std::tuple{"y_mm", &row_.y, &reflector_.y}})
            if (fields_.require(field, *text))
                *target = fields_.length(field, *text, Allowed::Any).value_or(Length());
        reflector_.angle =
            fields_.quantity<Angle>("angle_deg", row_.angle, Allowed::Any).value_or(Angle());
    }

    void readSizes() {
        const auto length = [&](const char* field, const std::string& text) {
            return fields_.length(field, text, Allowed::Positive);
        };
        reflector_.depth = fields_.length("depth_mm", row_.depth, Allowed::NotNegative);
        reflector_.fbh = length("fbh_mm", row_.fbh);
        reflector_.length = length("length_mm", row_.length);
        reflector_.width = length("width_mm", row_.width);
        reflector_.throughWall = length("through_wall_mm", row_.throughWall);
        reflector_.wall = length("wall_mm", row_.wall);
        reflector_.area = fields_.quantity<Area>("area_mm2", row_.area, Allowed::Positive);
        reflector_.backWallLoss = fields_.quantity<GainStep>("back_wall_loss_db", row_.backWallLoss,
                                                             Allowed::NotNegative);
        reflector_.backWallLossExplained = std::string(trimmed(row_.backWallLossExplained));
        if (isEmpty(row_.backWallLoss) && !isEmpty(row_.backWallLossExplained))
            fields_.fail("back_wall_loss_explained", "explains a loss that is not given");
        reflector_.overReference =
            fields_.quantity<GainStep>("over_reference_db", row_.overReference, Allowed::Any);
    }

    void readNotMeasurable() {
        std::string_view rest = trimmed(row_.notMeasurable);
        while (!rest.empty()) {
            const std::string word(rest.substr(0, rest.find_first_of(" \t")));
            rest = trimmed(rest.substr(word.size()));
            state(word);
        }
    }

    void state(const std::string& word) {
        const std::tuple<std::string_view, bool*, const std::string*> extents[] = {
            {"length", &reflector_.lengthNotMeasurable, &row_.length},
            {"width", &reflector_.widthNotMeasurable, &row_.width},
            {"through_wall", &reflector_.throughWallNotMeasurable, &row_.throughWall}};
        for (const auto& [name, flag, text] : extents) {
            if (name != word) continue;
            *flag = true;
            if (!isEmpty(*text))
                fields_.fail("not_measurable", "has %1, for which a size is typed", {word});
            return;
        }
        fields_.fail("not_measurable", "takes length, width and through_wall, not: %1", {word});
    }

    void readWords() {
        if (const auto text = trimmed(row_.kind); !text.empty()) {
            reflector_.kind = kindFrom(text);
            if (!reflector_.kind || !isUltrasonic(*reflector_.kind))
                fields_.fail("kind", "must be volumetric, planar, dross or empty, not: %1",
                             {row_.kind});
        }
        reflector_.reason = row_.reason;
        reflector_.relevance = fields_.relevance(row_.relevance, row_.reason);
    }

    std::optional<Size> sized() {
        if (!fields_.require("setting", row_.setting)) return std::nullopt;
        const auto isNamed = [&](const TypedSetting& setting) {
            return trimmed(setting.name) == trimmed(row_.setting);
        };
        const auto setting = std::ranges::find_if(settings_, isNamed);
        if (setting == settings_.end()) {
            fields_.fail("setting", "is none of this examination: %1", {row_.setting});
            return std::nullopt;
        }
        if (std::find_if(setting + 1, settings_.end(), isNamed) != settings_.end()) {
            fields_.fail("setting", "is not clear: two have the name %1", {row_.setting});
            return std::nullopt;
        }
        ReadReading reading = readingOf(row_, *setting);
        if (!reading.value) {
            fields_.add(std::move(reading.errors));
            return std::nullopt;
        }
        auto size = sizeOf(*reading.value);
        if (!size) {
            Error error = size.error();
            const std::string field = std::exchange(error.place, "");
            fields_.add({{field, std::move(error)}});
            return std::nullopt;
        }
        const Probe& probe = reading.value->probe;
        startsAtIndex_ = probe.angleDeg.value_or(0) > 0 && !probe.frontMm;
        return std::move(*size);
    }

    /// What was typed stays.
    void takeSize() {
        if (isEmpty(row_.depth)) reflector_.depth = rounded(size_->depthMm);
        if (isEmpty(row_.fbh)) reflector_.fbh = roundedSize(size_->fbhMm);
        takeExtent("length", row_.length, roundedSize(size_->lengthMm), size_->alongMeasurable,
                   reflector_.length, reflector_.lengthNotMeasurable);
        takeExtent("width", row_.width, roundedSize(size_->widthMm), size_->acrossMeasurable,
                   reflector_.width, reflector_.widthNotMeasurable);
    }

    void takeExtent(const char* name, const std::string& typed,
                    const std::optional<Length>& computed, const std::optional<bool>& measurable,
                    std::optional<Length>& extent, bool& notMeasurable) {
        if (!isEmpty(typed)) return;
        if (notMeasurable && computed)
            fields_.fail("not_measurable", "has %1, for which the reading gives %2 mm",
                         {name, toText(*computed)});
        extent = computed;
        if (measurable == false) notMeasurable = true;
    }

    void takeHeading() {
        const auto heading = fields_.quantity<Angle>("heading_deg", row_.heading, Allowed::Any);
        if (!heading) return;
        if (!size_ || !size_->surfaceDistanceMm) {
            if (size_ || !hasReading(row_))
                fields_.fail(
                    "heading_deg",
                    "needs a reading that tells how far ahead of the probe the indication "
                    "lies; without one leave it empty and give the indication's own place");
            return;
        }
        if (startsAtIndex_) {
            fields_.fail("heading_deg",
                         "needs the way from the probe's index point to its front, "
                         "which its setting does not have");
            return;
        }
        const double radians = heading->approximately() * std::numbers::pi / 180;
        for (auto [share, target] : {std::tuple{std::cos(radians), &reflector_.x},
                                     std::tuple{std::sin(radians), &reflector_.y}})
            *target += rounded(share * *size_->surfaceDistanceMm).value_or(Length());
    }

    void checkWidth() {
        if (!reflector_.width) return;
        const char* field = isEmpty(row_.width) ? "movement.across_mm" : "width_mm";
        if (!reflector_.length)
            fields_.fail(field,
                         "gives a width where there is no length; the longer one of the two "
                         "is the length");
        else if (*reflector_.width > *reflector_.length)
            fields_.fail(field, "gives a width of %1 mm, more than the length",
                         {toText(*reflector_.width)});
    }

    const TypedReflector& row_;
    const std::vector<TypedSetting>& settings_;
    RowFields fields_;
    Reflector reflector_;
    std::optional<Size> size_;
    bool startsAtIndex_ = false;  ///< the size's surface distance, as no front was typed
};

}  // namespace

ReadReflector read(const TypedReflector& row, const std::vector<TypedSetting>& settings) {
    return ReflectorReader(row, settings).read();
}

}  // namespace model
