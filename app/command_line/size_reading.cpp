// SPDX-License-Identifier: Apache-2.0
#include "size_reading.h"

#include "exchange/json_document.h"
#include "exchange/json_text.h"
#include "exchange/reading_json.h"
#include "exchange/size_json.h"
#include "ultrasonic/size.h"

namespace app {
namespace {

using model::Result;

Result<Outcome> sizeReading(const Arguments& arguments) {
    const Result<model::JsonValue> document = model::readJson(arguments.operand());
    if (!document) return document.error();
    const std::string name = model::documentName(arguments.operand());
    const Result<model::Reading> reading = model::readingFromJson(*document, name);
    if (!reading) return reading.error();
    const Result<model::Size> size = model::sizeOf(*reading);
    if (!size) {
        model::Error error = size.error();
        error.place = error.place.empty() ? name : name + ": " + error.place;
        return error;
    }
    return Outcome{ExitCode::Done, model::writeJson(model::sizeToJson(*size))};
}

}  // namespace

Command sizeCommand() {
    return {
        .name = "size",
        .operand = "READING.json",
        .summary = "sizes what an ultrasonic instrument showed",
        .details =
            "Reads a reading (fettlemark-reading/1) and prints place, equivalent flat-bottomed\n"
            "hole and extent (fettlemark-size/1). \"-\" as READING.json reads standard input.\n"
            "\n"
            "A straight probe with a round element is sized by the computed distance-gain-size\n"
            "model of a circular piston, every other probe by the far-field formulas. What does\n"
            "not follow from the reading is null; the notes say why, and which limits of the\n"
            "method were met. A null is not a size of zero.\n"
            "\n"
            "The exit code is 0 whenever the reading is possible, sized or not.\n",
        .options = {},
        .run = &sizeReading};
}

}  // namespace app
