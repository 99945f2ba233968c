# SPDX-License-Identifier: Apache-2.0
# cmake -DFOLDER=... -DNAMES=a|b -DHEADER=... -DFUNCTION=namespace::name -DOUT=....cpp -P embed.cmake
# Writes a .cpp with the bytes of the named files of FOLDER, for the function that HEADER declares.
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
// Written by embed.cmake.
#include \"${HEADER}\"

namespace {

${arrays}
constexpr model::EmbeddedFile kFiles[] = {
${entries}};

}  // namespace

std::span<const model::EmbeddedFile> ${FUNCTION}() { return kFiles; }
")
