// Compiled in: the page's files, and the example sites. Filled by cmake/CompilePage.cmake.
#pragma once

#include <span>
#include <string_view>

namespace quell::app::server {

struct Asset {
  std::string_view name;     ///< "index.html", "assets/index-4f2a91.js"
  std::string_view gzipped;  ///< the bytes, stored as browsers take them
};

/// Empty where the program was built without web/dist.
std::span<const Asset> page_assets();

struct ExampleFile {
  std::string_view example;  ///< folder: "01-gravity-dam"
  std::string_view name;     ///< "site.toml", "README.md", a CSV file
  std::string_view text;
};

/// All files of all examples, by folder and name.
std::span<const ExampleFile> example_files();

}  // namespace quell::app::server
