# Turns data/ into C++ tables: the curves (points from <id>.csv, card from <id>.toml), the bibliography, and the texts
# of the validation book and of the measured data (card <name>.toml, points <name>.csv). Run by CMake with -DDATA=… -DOUT=…; stops the build on a malformed file.

function(quoted text result)
  string(REPLACE "\\" "\\\\" text "${text}")
  string(REPLACE "\"" "\\\"" text "${text}")
  set(${result} "\"${text}\"" PARENT_SCOPE)
endfunction()

# The value of `key = "text"` or `key = number` in a card.
function(card_value card key file result)
  if(card MATCHES "(^|\n)${key} *= *\"([^\"\n]*)\"")
    set(${result} "${CMAKE_MATCH_2}" PARENT_SCOPE)
  elseif(card MATCHES "(^|\n)${key} *= *([-+.0-9eE]+)")
    set(${result} "${CMAKE_MATCH_2}" PARENT_SCOPE)
  else()
    message(FATAL_ERROR "${file}: no '${key}'")
  endif()
endfunction()

set(provenance_seen "Provenance::seen")
set(provenance_memory "Provenance::memory")
set(provenance_common_practice "Provenance::common_practice")
set(provenance_derived "Provenance::derived")

# --- curves
set(arrays "")
set(rows "")
file(GLOB curve_files ${DATA}/curves/*.csv)
list(SORT curve_files)
foreach(file ${curve_files})
  get_filename_component(id ${file} NAME_WE)
  file(READ ${DATA}/curves/${id}.toml card)
  foreach(key title x y source place provenance reading_error remarks)
    card_value("${card}" ${key} "data/curves/${id}.toml" ${key})
  endforeach()
  if(NOT DEFINED provenance_${provenance})
    message(FATAL_ERROR "data/curves/${id}.toml: provenance '${provenance}' is none of seen, memory, common_practice, derived")
  endif()
  file(STRINGS ${file} lines)
  list(POP_FRONT lines header)
  set(xs "")
  set(ys "")
  set(count 0)
  foreach(line ${lines})
    if(NOT line MATCHES "^ *([-+.0-9eE]+) *, *([-+.0-9eE]+) *$")
      message(FATAL_ERROR "${file}: not two numbers: '${line}'")
    endif()
    string(APPEND xs "${CMAKE_MATCH_1}, ")
    string(APPEND ys "${CMAKE_MATCH_2}, ")
    math(EXPR count "${count} + 1")
  endforeach()
  if(count LESS 2)
    message(FATAL_ERROR "${file}: fewer than two points")
  endif()
  string(APPEND arrays "constexpr double ${id}_x[] = {${xs}};\nconstexpr double ${id}_y[] = {${ys}};\n")
  string(APPEND arrays "static_assert(increasing(${id}_x), \"${id}: x must increase\");\n")
  foreach(key title x y source place remarks)
    quoted("${${key}}" ${key}_text)
  endforeach()
  string(APPEND rows "    {\"${id}\", ${title_text}, ${x_text}, ${y_text}, ${source_text}, ${place_text}, ${provenance_${provenance}}, "
                     "${reading_error}, ${remarks_text}, ${id}_x, ${id}_y},\n")
endforeach()

# --- bibliography: one field a line, "@kind{key," to "}"
file(STRINGS ${DATA}/sources.bib bib_lines)
set(source_rows "")
foreach(line ${bib_lines})
  if(line MATCHES "^@[a-z]+{([a-z0-9_]+),$")
    set(key ${CMAKE_MATCH_1})
    set(author "")
    set(year "")
    set(title "")
    set(publication "")
  elseif(line MATCHES "^ *(author|year|title|publication) *= *{(.*)},?$")
    quoted("${CMAKE_MATCH_2}" ${CMAKE_MATCH_1})
  elseif(line STREQUAL "}")
    foreach(field author year title publication)
      if("${${field}}" STREQUAL "")
        message(FATAL_ERROR "data/sources.bib: '${key}' has no ${field}")
      endif()
    endforeach()
    string(APPEND source_rows "    {\"${key}\", ${author}, ${year}, ${title}, ${publication}},\n")
  elseif(NOT line MATCHES "^(%.*)?$")
    message(FATAL_ERROR "data/sources.bib: not understood: '${line}'")
  endif()
endforeach()

file(WRITE ${OUT}/data_tables.cpp.new
"// Made by cmake/CompileData.cmake from data/. Do not edit.
#include <cstddef>

#include \"quell/base/curve.h\"
#include \"quell/base/source.h\"

namespace quell {
namespace {
template <std::size_t N>
constexpr bool increasing(const double (&values)[N]) {
  for (std::size_t i = 1; i < N; ++i)
    if (!(values[i] > values[i - 1])) return false;
  return true;
}
${arrays}
constexpr Curve curves[] = {
${rows}};
constexpr Source sources[] = {
${source_rows}};
}  // namespace

std::span<const Curve> all_curves() { return curves; }
std::span<const Source> all_sources() { return sources; }
}  // namespace quell
")
file(RENAME ${OUT}/data_tables.cpp.new ${OUT}/data_tables.cpp)

# --- the validation book: each file's text, for `quell verify`
set(check_rows "")
file(GLOB check_files ${DATA}/checks/*.toml)
list(SORT check_files)
foreach(file ${check_files})
  get_filename_component(name ${file} NAME)
  file(READ ${file} text)
  string(APPEND check_rows "    {\"${name}\", R\"toml(${text})toml\"sv},\n")
endforeach()
file(WRITE ${OUT}/check_texts.cpp.new
"// Made by cmake/CompileData.cmake from data/checks. Do not edit.
#include \"quell/app/check_texts.h\"

namespace quell::app {
namespace {
using namespace std::string_view_literals;  // a compiler counts the characters of a plain literal one step each, and gives up
constexpr CheckText texts[] = {
${check_rows}    {\"\", \"\"}};
}  // namespace

std::span<const CheckText> check_texts() { return std::span<const CheckText>(texts).first(std::size(texts) - 1); }
}  // namespace quell::app
")
file(RENAME ${OUT}/check_texts.cpp.new ${OUT}/check_texts.cpp)

# --- measured data: card and points of each set, read by the program
set(measured_rows "")
file(GLOB measured_files ${DATA}/measured/*.csv)
list(SORT measured_files)
foreach(file ${measured_files})
  get_filename_component(name ${file} NAME_WE)
  file(READ ${DATA}/measured/${name}.toml card)
  file(READ ${file} points)
  string(APPEND measured_rows "    {\"${name}\", R\"toml(${card})toml\"sv, R\"csv(${points})csv\"sv},\n")
endforeach()
file(WRITE ${OUT}/measured_texts.cpp.new
"// Made by cmake/CompileData.cmake from data/measured. Do not edit.
#include \"quell/app/check_texts.h\"

namespace quell::app {
namespace {
using namespace std::string_view_literals;
constexpr MeasuredText texts[] = {
${measured_rows}    {\"\", \"\", \"\"}};
}  // namespace

std::span<const MeasuredText> measured_texts() {
  return std::span<const MeasuredText>(texts).first(std::size(texts) - 1);
}
}  // namespace quell::app
")
file(RENAME ${OUT}/measured_texts.cpp.new ${OUT}/measured_texts.cpp)
