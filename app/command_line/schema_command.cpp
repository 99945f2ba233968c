// SPDX-License-Identifier: Apache-2.0
#include "schema_command.h"

#include "exchange/json_text.h"
#include "exchange/schemas.h"

namespace app {
namespace {

model::Result<Outcome> printSchema(const Arguments& arguments) {
    Outcome outcome;
    if (arguments.operand().empty()) {
        for (const std::string& name : model::schemaNames()) outcome.text += name + "\n";
        return outcome;
    }
    const auto schema = model::publishedSchema(arguments.operand());
    if (!schema) return schema.error();
    outcome.text = model::writeJson(*schema);
    return outcome;
}

}  // namespace

Command schemaCommand() {
    return {.name = "schema",
            .operand = "NAME",
            .operandOptional = true,
            .summary = "prints a JSON Schema of the documents read and written",
            .details =
                "Without NAME lists the names: of documents, and of registers, whose entries\n"
                "(fettlemark-entry/1) have a schema each; the names of its fields are the columns\n"
                "that import takes. The schemas are of draft 2020-12.\n",
            .options = {},
            .run = &printSchema};
}

}  // namespace app
