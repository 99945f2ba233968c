# SPDX-License-Identifier: Apache-2.0
# A folder is a module is a CMake target: every .cpp in it, and the modules it may include.
# A module's headers are reached as "name/header.h" through a link in the build tree that only
# targets which link the module can see, so an include against the architecture does not build.

add_library(fettlemark_warnings INTERFACE)
target_compile_options(fettlemark_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wnon-virtual-dtor -Woverloaded-virtual -Werror
  $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)  # false alarms of GCC 12 at -O3, GCC bug 105651
if(FETTLEMARK_SANITIZE)
  target_compile_options(fettlemark_warnings INTERFACE
    -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer
    -Wno-maybe-uninitialized)  # false alarms of GCC 12 in instrumented variants
  target_link_options(fettlemark_warnings INTERFACE -fsanitize=address,undefined)
endif()

# fettlemark_module(name [LINKS module...] [LIBRARIES target...] [PRIVATE target...])
#   LINKS      modules whose headers this one's headers use
#   LIBRARIES  outside targets that its headers use
#   PRIVATE    outside targets or modules used in its .cpp files only
function(fettlemark_module name)
  cmake_parse_arguments(M "" "" "LINKS;LIBRARIES;PRIVATE" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp ${CMAKE_CURRENT_SOURCE_DIR}/*.h)
  if(NOT sources)
    return()
  endif()
  set(view ${CMAKE_BINARY_DIR}/include/${name})
  file(MAKE_DIRECTORY ${view})
  file(CREATE_LINK ${CMAKE_CURRENT_SOURCE_DIR} ${view}/${name} SYMBOLIC)
  add_library(fettlemark_${name} STATIC ${sources})
  set_target_properties(fettlemark_${name} PROPERTIES LINKER_LANGUAGE CXX)
  target_include_directories(fettlemark_${name} PUBLIC ${view})
  list(TRANSFORM M_LINKS PREPEND fettlemark_)
  target_link_libraries(fettlemark_${name} PUBLIC ${M_LINKS} ${M_LIBRARIES}
                                           PRIVATE ${M_PRIVATE} fettlemark_warnings)
endfunction()

# fettlemark_test(name [LINKS module...] [LIBRARIES target...]): every .cpp of the current folder
# as one GoogleTest program.
function(fettlemark_test name)
  cmake_parse_arguments(T "" "" "LINKS;LIBRARIES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp ${CMAKE_CURRENT_SOURCE_DIR}/*.h)
  if(NOT sources)
    return()
  endif()
  add_executable(test_${name} ${sources})
  list(TRANSFORM T_LINKS PREPEND fettlemark_)
  target_link_libraries(test_${name} PRIVATE ${T_LINKS} ${T_LIBRARIES} GTest::gmock GTest::gtest_main
                                             fettlemark_warnings)
  gtest_discover_tests(test_${name} TEST_PREFIX "${name}." DISCOVERY_TIMEOUT 60
                       WORKING_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR})
endfunction()

# fettlemark_embed(module pattern header function): the files of the current folder that match go
# into the module byte for byte, as the std::span<const model::EmbeddedFile> that `function`
# (with its namespace, declared in `header`) returns.
set(FETTLEMARK_EMBED ${CMAKE_CURRENT_LIST_DIR}/embed.cmake)
function(fettlemark_embed module pattern header function)
  file(GLOB files CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${pattern})
  set(names "")
  foreach(file IN LISTS files)
    cmake_path(GET file FILENAME name)
    cmake_path(GET file PARENT_PATH folder)
    list(APPEND names ${name})
  endforeach()
  list(JOIN names "|" names)
  string(MAKE_C_IDENTIFIER ${function} stem)
  set(embedded ${CMAKE_CURRENT_BINARY_DIR}/${stem}.cpp)
  add_custom_command(
    OUTPUT ${embedded}
    COMMAND ${CMAKE_COMMAND} -DFOLDER=${folder} "-DNAMES=${names}" -DHEADER=${header}
            -DFUNCTION=${function} -DOUT=${embedded} -P ${FETTLEMARK_EMBED}
    DEPENDS ${files} ${FETTLEMARK_EMBED}
    COMMENT "Embedding ${pattern}" VERBATIM)
  target_sources(fettlemark_${module} PRIVATE ${embedded})
endfunction()
