# SPDX-License-Identifier: Apache-2.0
# cmake -DFOLDER=... -DNAMES=a.json|b.json -DOUT=....cpp -P embed_scenario.cmake
# Writes a .cpp with the bytes of the named files of FOLDER, for scenario_files.h.
string(REPLACE "|" ";" names "${NAMES}")
list(SORT names)
set(arrays "")
set(entries "")
set(index 0)
foreach(name IN LISTS names)
  file(READ ${FOLDER}/${name} hex HEX)
  string(REGEX REPLACE "(................................)" "\\1\n" hex "${hex}")
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${hex}")
  string(APPEND arrays "constexpr char kFile${index}[] = {\n${bytes}};\n")
  string(APPEND entries "    {\"${name}\", {kFile${index}, sizeof kFile${index}}},\n")
  math(EXPR index "${index} + 1")
endforeach()
file(WRITE ${OUT} "// SPDX-License-Identifier: Apache-2.0
// Written by embed_scenario.cmake.
#include \"demo_db/scenario_files.h\"

namespace demo {
namespace {

${arrays}
constexpr ScenarioFile kFiles[] = {
${entries}};

}  // namespace

std::span<const ScenarioFile> scenarioFiles() { return kFiles; }

}  // namespace demo
")
