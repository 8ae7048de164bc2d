# Turns the page's files (PAGE, may be missing) and the example sites into C++ tables. The page's files are gzipped, as browsers
# take them. Run by CMake with -DPAGE=… -DEXAMPLES=… -DOUT=….

# --- the page
set(arrays "")
set(rows "")
set(count 0)
file(GLOB_RECURSE page_files RELATIVE ${PAGE} ${PAGE}/*)
list(SORT page_files)
foreach(name ${page_files})
  # Packed beside its own name, and without a time, so that the same page gives the same bytes.
  file(ARCHIVE_CREATE OUTPUT ${OUT}/page.gz PATHS ${PAGE}/${name} FORMAT raw COMPRESSION GZip COMPRESSION_LEVEL 9 MTIME 0)
  file(READ ${OUT}/page.gz bytes HEX)
  string(REGEX REPLACE "(..)" "\\\\x\\1" bytes "${bytes}")
  string(APPEND arrays "constexpr char page_${count}[] = \"${bytes}\";\n")
  string(APPEND rows "    {\"${name}\", {page_${count}, sizeof page_${count} - 1}},\n")
  math(EXPR count "${count} + 1")
endforeach()
file(REMOVE ${OUT}/page.gz)

# --- the examples
set(example_rows "")
file(GLOB example_files RELATIVE ${EXAMPLES} ${EXAMPLES}/*/*.toml ${EXAMPLES}/*/*.csv ${EXAMPLES}/*/*.md)
list(SORT example_files)
foreach(file ${example_files})
  get_filename_component(example ${file} DIRECTORY)
  get_filename_component(name ${file} NAME)
  file(READ ${EXAMPLES}/${file} text)
  string(APPEND example_rows "    {\"${example}\", \"${name}\", R\"example(${text})example\"},\n")
endforeach()

file(WRITE ${OUT}/embedded.cpp.new
"// Made by cmake/CompilePage.cmake from web/dist and examples. Do not edit.
#include \"quell/app/server/embedded.h\"

namespace quell::app::server {
namespace {
${arrays}
constexpr Asset assets[] = {
${rows}    {\"\", \"\"}};
constexpr ExampleFile files[] = {
${example_rows}    {\"\", \"\", \"\"}};
}  // namespace

std::span<const Asset> page_assets() { return std::span<const Asset>(assets).first(std::size(assets) - 1); }
std::span<const ExampleFile> example_files() { return std::span<const ExampleFile>(files).first(std::size(files) - 1); }
}  // namespace quell::app::server
")
file(RENAME ${OUT}/embedded.cpp.new ${OUT}/embedded.cpp)
