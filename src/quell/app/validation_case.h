// A worked example of several steps: each calls a method with expressions over what is given and what earlier steps gave, or
// names the value of an expression. docs/validation.md says how it is written.
#pragma once

#include <toml++/toml.h>

#include "quell/app/validation.h"

namespace quell::app {

/// Reads and runs one [[case]] and adds its rows or its fault to the file.
void run_case(const toml::table& table, CheckedFile& file);

}  // namespace quell::app
