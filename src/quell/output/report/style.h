// The look of the report.
#pragma once

#include <string>
#include <string_view>

namespace quell::output {

/// CSS for screen and A4. `header` goes into the page margin of every printed page.
std::string report_style(std::string_view header);

}  // namespace quell::output
