// What a design run takes and leaves behind, the same from the command line and from the page.
#pragma once

#include <string>
#include <vector>

#include "quell/design/result.h"
#include "quell/io/files.h"
#include "quell/io/site_file.h"

namespace quell::app {

/// Every type of the catalogue, or the site file's candidates.
std::vector<const dissipators::Dissipator*> wanted_types(const site::Site& site, bool all_types);

/// The report as one HTML file; it needs a result with workings and profiles.
std::string report_of(const io::SiteFile& file, const design::DesignResult& result, UnitSystem units);

/// result.json, report.html and the figures (SVG).
std::vector<io::FileText> output_files(const io::SiteFile& file, const design::DesignResult& result, UnitSystem units);

}  // namespace quell::app
