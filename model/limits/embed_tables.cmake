# SPDX-License-Identifier: Apache-2.0
# cmake -DFOLDER=... -DNAMES=a.table|b.table -DOUT=....cpp -P embed_tables.cmake
# Writes a .cpp with the bytes of the named files of FOLDER, for shipped_tables.h.
string(REPLACE "|" ";" names "${NAMES}")
list(SORT names)
set(arrays "")
set(entries "")
set(index 0)
foreach(name IN LISTS names)
  file(READ ${FOLDER}/${name} hex HEX)
  string(REGEX REPLACE "(................................)" "\\1\n" hex "${hex}")
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," bytes "${hex}")
  string(APPEND arrays "constexpr char kTable${index}[] = {\n${bytes}};\n")
  string(APPEND entries "    {\"${name}\", {kTable${index}, sizeof kTable${index}}},\n")
  math(EXPR index "${index} + 1")
endforeach()
file(WRITE ${OUT} "// SPDX-License-Identifier: Apache-2.0
// Written by embed_tables.cmake.
#include \"limits/shipped_tables.h\"

namespace model {
namespace {

${arrays}
constexpr ShippedTable kTables[] = {
${entries}};

}  // namespace

std::span<const ShippedTable> shippedTables() { return kTables; }

}  // namespace model
")
