// What the commands that take a site file share.
#pragma once

#include "quell/io/site_file.h"

namespace quell::app {

/// Prints remarks and problems to stderr; true where the site may be used.
bool report_problems(const io::SiteFile& file);

}  // namespace quell::app
