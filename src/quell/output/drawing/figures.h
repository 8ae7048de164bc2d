// The figures of a design as SVG text, made by us: no fonts or files from outside.
#pragma once

#include <string>

#include "quell/design/result.h"

namespace quell::output {

/// Long section to scale (equal horizontal and vertical): crest, chute, basin with its elements, river, water surface, energy
/// line and jump at the governing discharge and the check flood; levels and main dimensions labelled.
std::string long_section_svg(const site::Site& site, const design::DesignResult& result, const design::Option& option,
                             UnitSystem units);

/// Required against available tailwater depth over discharge, all tailwater cases, margin and governing point marked.
std::string tailwater_figure_svg(const site::Site& site, const design::DesignResult& result, const design::Option& option,
                                 UnitSystem units);

/// The operator's chart of gate openings: tailwater that each needs and has. Empty where there are no gates.
std::string operation_figure_svg(const design::Option& option, UnitSystem units);

/// Fields of application of the types listed, and the path of the site's discharges through them.
std::string fields_figure_svg(const site::Site& site, const design::DesignResult& result, UnitSystem units);

}  // namespace quell::output
