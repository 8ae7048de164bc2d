// What the site file names elsewhere: CSV files are read into the site, and what follows from several keys is filled in.
#pragma once

#include <filesystem>
#include <string>

#include "quell/io/problem_list.h"
#include "quell/io/schema.h"

namespace quell::io {

struct DataFiles {
  std::filesystem::path folder;  ///< paths in the site file start here, in messages
  const FileSource& read;
  SiteFile& found;           ///< takes problems and remarks in the files
  std::string& digest_text;  ///< grows by the bytes of every file read
  std::vector<EchoedInput>& inputs;
};

/// Reads every file that the draft names, each judged on its own; `problems` are those of the site file. Each good table is
/// marked in `Draft::read`: "river.rating.checked".
void complete_site(Draft& draft, DataFiles files, ProblemList& problems);

}  // namespace quell::io
